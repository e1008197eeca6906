import { describe, expect, test } from "vitest";
import type { Book } from "../../../src/workbook/book";
import { filledIn } from "../../../src/workbook/layout/filled-in";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { doseLadder } from "../../../templates/plans/dose-ladder";

const planned = layOut(doseLadder);
const results = planned.tables.find(({ name }) => name === "results");
if (!results) throw new Error("The dose ladder has no table of results.");

const last = results.area.row + results.area.rows;
const column = { row: results.area.row + 1, columns: 1, rows: results.area.rows - 1 };
const scratch = { name: "Scratch", cells: { 0: { 0: { value: 1 } } } };

/** A person let the results grow by two rows, and added a sheet and a table of their own. */
const made: Book = {
  ...planned,
  sheets: [...planned.sheets, scratch],
  tables: [
    ...planned.tables.filter((table) => table !== results),
    { ...results, area: { ...results.area, rows: results.area.rows + 2 } },
    {
      name: "ownAdditives",
      sheet: "Scratch",
      area: { row: 4, column: 0, rows: 2, columns: 2 },
      columns: ["Additive", "solids"],
      headerRow: true,
      totalsRow: false,
    },
  ],
};
const filled = filledIn(planned, made);
const sheet = (name: string) => filled.sheets.find((one) => one.name === name);

describe("a template that people filled in", () => {
  test("keeps its charts when a sheet is added, and takes the sheet", () => {
    expect(filled.sheets.map(({ name }) => name)).toEqual([
      ...planned.sheets.map(({ name }) => name),
      "Scratch",
    ]);
    expect(sheet("Fit")?.charts).toHaveLength(1);
    expect(sheet("Scratch")?.cells).toBe(scratch.cells);
  });

  test("takes the tables that people made beside its own", () => {
    const own = filled.tables.find(({ name }) => name === "ownAdditives");
    expect(own?.formulas).toEqual([undefined, undefined]);
    expect(filled.tables.find(({ name }) => name === "results")?.formulas.at(-1)).toContain(
      "INDEX",
    );
  });

  test("draws, checks and marks the rows that a table took in", () => {
    const { entryRules, name } = sheet("Results") ?? { entryRules: [], name: "" };
    const allowed = entryRules.filter(({ area }) => area.row === column.row);
    expect(allowed.length).toBeGreaterThanOrEqual(6);
    for (const { area } of allowed) expect(area.row + area.rows).toBe(last + 2);
    const measured = sheet("Fit")?.charts[0]?.series.find(({ role }) => role === "measured");
    expect(measured?.values).toMatchObject({
      sheet: name,
      area: { ...column, rows: column.rows + 2 },
    });
    expect(measured?.x?.area.rows).toBe(column.rows + 2);
  });

  test("leaves what is over other cells as it was", () => {
    expect(sheet("Mill run")?.entryRules).toEqual(
      planned.sheets.find(({ name }) => name === "Mill run")?.entryRules,
    );
  });
});
