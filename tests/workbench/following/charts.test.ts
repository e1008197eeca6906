import { InsertRowMutation, RemoveRowMutation } from "@univerjs/sheets";
import { describe, expect, test } from "vitest";
import { followChart } from "../../../src/workbench/following/charts";
import { Follower } from "../../../src/workbench/following/follower";
import type { CellsOf, PlannedChart } from "../../../src/workbook/layout/planned";
import { Commands } from "./commands";

const column = (sheet: string, at: number): CellsOf => ({
  sheet,
  area: { row: 4, column: at, rows: 3, columns: 1 },
});
const chart: PlannedChart = {
  row: 10,
  column: 1,
  width: 400,
  height: 300,
  chart: "columns",
  title: "Load",
  alt: "Columns.",
  x: { title: "Day" },
  y: { title: "COD (kg/d)" },
  series: [
    {
      name: "starch",
      role: "line",
      x: column("Log", 0),
      values: { ...column("Log", 2), spillAt: { row: 4, column: 1 } },
    },
    { name: "limit", role: "limit", values: column("Permit", 1) },
  ],
};
const ids: Readonly<Record<string, string>> = { Log: "sheet-0", Permit: "sheet-1" };

/** The chart, on the sheet Permit, after rows of a sheet were inserted or removed. */
function chartAfter(id: string, from: number, to: number, subUnitId: string, names = ids) {
  const commands = new Commands();
  const now = followChart(new Follower(commands.grid), "sheet-1", chart, (name) => ids[name] ?? "");
  const range = { startRow: from, endRow: to, startColumn: 0, endColumn: 99 };
  commands.run({ id, params: { subUnitId, range } });
  return now((its) => Object.keys(names).find((name) => names[name] === its));
}

describe("a chart", () => {
  test("follows the cells that it draws on another sheet, and stays where it stands", () => {
    const { chart: now, lost } = chartAfter(InsertRowMutation.id, 0, 1, "sheet-0");
    expect(now).toMatchObject({ row: 10, column: 1 });
    expect(now.series[0]).toMatchObject({
      values: { area: { row: 6, rows: 3 }, spillAt: { row: 6, column: 1 } },
      x: { area: { row: 6, rows: 3 } },
    });
    expect(now.series[1]).toEqual(chart.series[1]);
    expect(lost).toEqual([]);
  });

  test("moves with the cell under its corner", () => {
    const { chart: now, corner } = chartAfter(InsertRowMutation.id, 8, 8, "sheet-1");
    expect(now).toMatchObject({ row: 11, column: 1 });
    expect(corner()).toEqual({ row: 11, column: 1 });
    expect(now.series).toEqual(chart.series);
  });

  test("comes to stand where its corner was when that row is removed", () => {
    const { corner } = chartAfter(RemoveRowMutation.id, 9, 12, "sheet-1");
    expect(corner()).toEqual({ row: 9, column: 1 });
  });

  test("loses a series whose cells are removed, and says which", () => {
    const { chart: now, lost } = chartAfter(RemoveRowMutation.id, 3, 8, "sheet-0");
    expect(now.series.map(({ name }) => name)).toEqual(["limit"]);
    expect(lost).toEqual(["starch"]);
  });

  test("loses the series of a sheet that is gone, and knows another one by its new name", () => {
    const gone = chartAfter(InsertRowMutation.id, 0, 0, "sheet-9", { Permit: "sheet-1" });
    expect(gone.lost).toEqual(["starch"]);
    const renamed = { "Mill log": "sheet-0", Permit: "sheet-1" };
    const { chart: now } = chartAfter(InsertRowMutation.id, 0, 0, "sheet-9", renamed);
    expect(now.series[0]?.values.sheet).toBe("Mill log");
  });
});
