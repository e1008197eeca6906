import { readFileSync } from "node:fs";
import path from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, inject, test } from "vitest";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layOut } from "../../../src/workbook/layout/lay-out";
import type { CellsOf, PlannedChart } from "../../../src/workbook/layout/planned";
import { readCharts } from "../../../src/workbook/read/charts";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { plans } from "../../../templates/plans";

const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));
const fileOf = (id: string) =>
  new Uint8Array(readFileSync(path.join(import.meta.dirname, `../../../templates/${id}.xlsx`)));
const read = async (bytes: Uint8Array) => readCharts(await readWorkbook(bytes, names));

/** Where it starts; how far it may reach is not in the file. */
const start = ({ sheet, area, spillAt }: CellsOf) => ({
  sheet,
  row: area.row,
  column: area.column,
  ...(spillAt && { spillAt }),
});
/** As files have them. */
const fromTop = (charts: readonly PlannedChart[]) =>
  [...charts].sort((one, other) => one.row - other.row);
const compared = ({ width, height, row, column, series, ...chart }: PlannedChart) => ({
  ...chart,
  row,
  column,
  width: expect.closeTo(width, 0),
  height: expect.closeTo(height, 0),
  series: series.map(({ values, x, ...one }) => ({
    ...one,
    values: start(values),
    ...(x && { x: start(x) }),
  })),
});

describe("the charts of a template's file", () => {
  test.each(plans)("$id are those of its plan", async (plan) => {
    const planned = layOut(plan).sheets.map(({ charts }) => fromTop(charts).map(compared));
    const charts = await read(fileOf(plan.id));
    expect(
      charts.map((sheet) =>
        sheet.map((chart) => ({
          ...compared(chart),
          width: chart.width,
          height: chart.height,
        })),
      ),
    ).toEqual(planned);
  });

  test("reach at least as far as they did when the file was written, and not beyond their room", async () => {
    for (const plan of plans) {
      const planned = layOut(plan).sheets.flatMap(({ charts }) => fromTop(charts));
      for (const [at, { series }] of (await read(fileOf(plan.id))).flat().entries())
        for (const [index, { values }] of series.entries()) {
          const room = planned[at]?.series[index]?.values.area.rows ?? 0;
          expect(values.area.rows).toBeGreaterThan(0);
          expect(values.area.rows).toBeLessThanOrEqual(room);
        }
    }
  });
});

/** The file of a template with one of its parts changed. */
function changed(part: string, change: (text: string) => string): Uint8Array {
  const parts = unzipSync(fileOf("dose-and-effluent"));
  const text = strFromU8(parts[part] as Uint8Array);
  const then = change(text);
  expect(then).not.toBe(text);
  return zipSync({ ...parts, [part]: strToU8(then) });
}
const chart1 = "xl/charts/chart1.xml";

describe("a chart that is not understood", () => {
  const all = layOut(
    plans.find(({ id }) => id === "dose-and-effluent") as (typeof plans)[number],
  ).sheets.flatMap(({ charts }) => charts).length;

  test.each([
    ["of another kind", (text: string) => text.replaceAll("barChart", "pieChart")],
    ["that is no XML", (text: string) => text.slice(0, 500)],
    ["whose cells are in another workbook", (text: string) => text.replaceAll("<c:f>", "<c:f>[1]")],
    [
      "of more cells than are drawn",
      (text: string) => text.replaceAll(/<c:f>[^<]*/g, "<c:f>Dose!$A$1:$A$20000"),
    ],
    [
      "of a block of cells",
      (text: string) => text.replaceAll(/<c:f>[^<]*/g, "<c:f>Dose!$A$1:$C$9"),
    ],
    [
      "of cells that no sheet has",
      (text: string) => text.replaceAll(/<c:f>[^<]*/g, "<c:f>Dose!$A$0:$ZZZZ$9"),
    ],
    [
      "with a second scale",
      (text: string) => text.replace("</c:plotArea>", "<c:valAx/><c:catAx/></c:plotArea>"),
    ],
    [
      "of a document type",
      (text: string) => text.replace("?>", '?><!DOCTYPE c [<!ENTITY a "b">]>'),
    ],
  ])("%s is left out, and the others are there", async (_, change) => {
    const charts = (await read(changed(chart1, change))).flat();
    expect(charts.length).toBe(all - 1);
  });

  test("does not take the numbers of the workbook with it", async () => {
    const { book } = await readWorkbook(
      changed(chart1, (text) => text.slice(0, 500)),
      names,
    );
    expect(book.sheets.length).toBeGreaterThan(3);
  });
});

test("a chart without words for those who cannot see it is called by its title", async () => {
  const charts = await read(
    changed("xl/drawings/drawing1.xml", (text) => text.replace(/ descr="[^"]*"/, "")),
  );
  expect(charts.flat()[0]?.alt).toBe("Where the dose goes, and what stays");
});

test("a chart that draws hidden cells, too, is read and written so", async () => {
  const charts = await read(
    changed(chart1, (text) => text.replace('plotVisOnly val="1"', 'plotVisOnly val="0"')),
  );
  expect(charts.flat().map(({ drawsHidden }) => drawsHidden)).toContain(true);
  const plan = plans.find(({ id }) => id === "dose-and-effluent") as (typeof plans)[number];
  const planned = layOut(plan);
  const sheets = planned.sheets.map((sheet) => ({
    ...sheet,
    charts: sheet.charts.map((chart, at) => ({ ...chart, ...(at === 0 && { drawsHidden: true }) })),
  }));
  const again = await read(await writeWorkbook({ ...planned, sheets }, names));
  const draws = (all: readonly PlannedChart[]) => fromTop(all).map((one) => one.drawsHidden);
  expect(again.map(draws)).toEqual(sheets.map(({ charts }) => draws(charts)));
});
