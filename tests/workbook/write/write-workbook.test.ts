import ExcelJS from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, inject, test } from "vitest";
import {
  type Book,
  type BorderLine,
  borderLines,
  type Cell,
  type Sheet,
  type Style,
} from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layOut } from "../../../src/workbook/layout/lay-out";
import type { PlannedBook } from "../../../src/workbook/layout/planned";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { plans } from "../../../templates/plans";
import { samplePlan } from "../sample-plan";

const names = functionNames(["DOSE.TARGET"]);

/** The sample as if computed: doses beside the log, 6.5 kept at each day's retention. */
function computed(): PlannedBook {
  const book = layOut(samplePlan);
  const cells = structuredClone(book.sheets[1]?.cells) as Record<number, Record<number, Cell>>;
  [0.8, 0.82, 0.79, 0.81].forEach((retention, line) => {
    const row = cells[3 + line] as Record<number, Cell>;
    const value = 6.5 / retention;
    row[4] =
      line === 0
        ? { ...(row[4] as Cell), value, spill: { rows: 4, columns: 1 } }
        : { ...(row[4] as Cell), value, spilled: true };
  });
  const sheets = book.sheets.map((sheet, index) => (index === 1 ? { ...sheet, cells } : sheet));
  return { ...book, sheets };
}

describe("a workbook written from a plan", () => {
  let bytes: Uint8Array;
  let parts: Record<string, string>;
  let read: ExcelJS.Workbook;

  beforeAll(async () => {
    bytes = await writeWorkbook(computed(), names);
    parts = Object.fromEntries(
      Object.entries(unzipSync(bytes)).map(([path, part]) => [path, strFromU8(part)]),
    );
    read = await new ExcelJS.Workbook().xlsx.load(bytes.slice().buffer as ArrayBuffer);
  });

  test("opens in another program with its sheets, inputs and formats", () => {
    expect(read.worksheets.map(({ name }) => name)).toEqual(["About", "Mill log"]);
    const input = read.getWorksheet("About")?.getCell("B4");
    expect(input?.value).toBe(6.5);
    expect(input?.numFmt).toBe("0.0");
    expect(input?.font.color?.argb).toBe("FF0B6E6E");
    expect(input?.dataValidation).toMatchObject({
      type: "decimal",
      operator: "between",
      formulae: [0.1, 50],
      promptTitle: "Starch wanted in the sheet",
      error: "Give a number from 0.1 to 50 (kg/t).",
    });
    expect(read.definedNames.getRanges("wanted").ranges).toEqual(["About!$B$4"]);
  });

  test("holds dates as dates, the frozen rows and the printed page", () => {
    const log = read.getWorksheet("Mill log");
    expect(log?.getCell("A4").value).toEqual(new Date(Date.UTC(2024, 2, 1)));
    expect(log?.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 3 });
    expect(log?.pageSetup).toMatchObject({ orientation: "landscape", fitToWidth: 1 });
    expect(log?.pageSetup.printArea).toBe("A1:F30");
    expect(parts["xl/workbook.xml"]).toContain("'Mill log'!$3:$3");
  });

  test("hides the rows and columns that are hidden", async () => {
    const { sheets, ...book } = computed();
    const hidden = { hiddenRows: [0, 30], hiddenColumns: [1, 9] };
    const bytes = await writeWorkbook(
      { ...book, sheets: sheets.map((sheet) => ({ ...sheet, ...hidden })) },
      names,
    );
    const { sheets: saved } = (await readWorkbook(bytes, names)).book;
    expect(saved.map(({ hiddenRows, hiddenColumns }) => ({ hiddenRows, hiddenColumns }))).toEqual(
      sheets.map(() => hidden),
    );
    expect(saved[1]?.cells[3]).toEqual(
      (await readWorkbook(await writeWorkbook(computed(), names), names)).book.sheets[1]?.cells[3],
    );
  });

  test("keeps the looks that columns have for cells in which nothing stands", async () => {
    const { sheets, styles, ...book } = computed();
    const look = { format: '#,##0.0 "kg/t"', bold: true };
    const looking = { hiddenColumns: [9], columnStyles: { 9: "fresh", 12: "fresh" } };
    const bytes = await writeWorkbook(
      {
        ...book,
        styles: { ...styles, fresh: look },
        sheets: sheets.map((sheet) => ({ ...sheet, ...looking })),
      },
      names,
    );
    const again = (await readWorkbook(bytes, names)).book;
    const { columnStyles = {}, hiddenColumns } = again.sheets[1] as Sheet;
    expect(hiddenColumns).toEqual([9]);
    expect(Object.keys(columnStyles)).toEqual(["9", "12"]);
    expect(again.styles[columnStyles[12] ?? ""]).toMatchObject(look);
  });

  test("stores our functions in the form that Excel saves, as dynamic arrays with their values", () => {
    const sheet = parts["xl/worksheets/sheet2.xml"];
    expect(sheet).toContain(
      '<f t="array" ref="E4:E7">_xldudf_WETEND_DOSE_TARGET(wanted,log[[Overall retention (fraction)]])</f><v>8.125</v>',
    );
    expect(sheet).toMatch(/<c r="E4" s="\d+" cm="1">/);
    expect(read.getWorksheet("Mill log")?.getCell("E6").value).toBeCloseTo(6.5 / 0.79, 14);
    expect(sheet).toContain('<f t="array" ref="H4">MAX(_xlfn.ANCHORARRAY($E$4))</f>');
  });

  test("keeps table cells plain, and names the formula of the column", () => {
    expect(parts["xl/worksheets/sheet2.xml"]).toMatch(/<c r="C4" s="\d+"><f>100\*\(1-log/);
    expect(parts["xl/tables/table1.xml"]).toContain(
      '<tableColumn id="3" name="Lost (%)"><calculatedColumnFormula>100*(1-log[[#This Row],[Overall retention (fraction)]])</calculatedColumnFormula>',
    );
  });

  test("marks cells by rule, with looks that the styles hold", () => {
    const about = read.getWorksheet("About") as unknown as {
      conditionalFormattings: { ref: string; rules: { formulae: string[]; style: unknown }[] }[];
    };
    expect(about.conditionalFormattings[0]).toMatchObject({
      ref: "B6",
      rules: [
        {
          formulae: ["AND(ISNUMBER(B6),B6>wanted*1.4)"],
          style: { font: { bold: true, color: { argb: "FF9C1C12" } } },
        },
      ],
    });
  });

  test("draws a spill as far as it reaches, with titles, units and a text for who cannot see it", () => {
    const chart = parts["xl/charts/chart1.xml"];
    expect(chart).toContain("<c:f>'Mill log'!$E$4:$E$7</c:f>");
    expect(chart).toContain("<a:t>Dose (kg/t)</a:t>");
    expect(chart).toContain('<c:pt idx="0"><c:v>8.125</c:v></c:pt><c:pt idx="1"><c:v>7.92682');
    expect(parts["xl/drawings/drawing1.xml"]).toContain("The dose of each day of the log.");
  });

  test("puts the elements of a series in the order of the schema", () => {
    const series = /<c:ser>(.*?)<\/c:ser>/s.exec(parts["xl/charts/chart1.xml"] ?? "")?.[1] ?? "";
    const order = ["c:idx", "c:order", "c:tx", "c:spPr", "c:marker", "c:xVal", "c:yVal"];
    const at = order.map((name) => series.indexOf(`<${name}`));
    expect(at.every((place) => place >= 0)).toBe(true);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
  });

  test("draws a limit as a line across columns", async () => {
    const sheets = computed().sheets.map((sheet) => ({
      ...sheet,
      charts: sheet.charts.map((chart) => {
        const [dose] = chart.series as [(typeof chart.series)[number]];
        const limit = { ...dose, name: "Limit", role: "limit" as const };
        return { ...chart, chart: "stacked columns" as const, series: [dose, limit] };
      }),
    }));
    const files = unzipSync(await writeWorkbook({ ...computed(), sheets }, names));
    const chart = strFromU8(files["xl/charts/chart1.xml"] as Uint8Array);
    expect(/<c:barChart>(.*?)<\/c:barChart>/s.exec(chart)?.[1]).not.toContain("Limit");
    expect(/<c:lineChart>(.*?)<\/c:lineChart>/s.exec(chart)?.[1]).toMatch(
      /Limit.*prstDash val="dash"/s,
    );
  });

  test("draws bars from the top, with each title at its own axis", async () => {
    const sheets = computed().sheets.map((sheet) => ({
      ...sheet,
      charts: sheet.charts.map((chart) => ({ ...chart, chart: "bars" as const })),
    }));
    const files = unzipSync(await writeWorkbook({ ...computed(), sheets }, names));
    const chart = strFromU8(files["xl/charts/chart1.xml"] as Uint8Array);
    const [categories = "", values = ""] = chart.split("<c:valAx>");
    expect(categories).toMatch(/<c:orientation val="maxMin".*<a:t>Day</s);
    expect(values).toMatch(/<a:t>Dose \(kg\/t\)<.*<c:crosses val="max"/s);
  });

  test("marks what was measured on a curve, and only that", async () => {
    const sheets = computed().sheets.map((sheet) => ({
      ...sheet,
      charts: sheet.charts.map((chart) => {
        const [dose] = chart.series as [(typeof chart.series)[number]];
        const series = [dose, { ...dose, role: "measured" as const }];
        return { ...chart, chart: "curve" as const, series };
      }),
    }));
    const files = unzipSync(await writeWorkbook({ ...computed(), sheets }, names));
    const chart = strFromU8(files["xl/charts/chart1.xml"] as Uint8Array);
    const symbols = [...chart.matchAll(/<c:symbol val="(\w+)"/g)].map(([, symbol]) => symbol);
    expect(symbols).toEqual(["none", "square"]);
  });

  test("does not ask for a recalculation, so that cached values are seen without the add-in", () => {
    expect(parts["xl/workbook.xml"]).not.toContain("fullCalcOnLoad");
  });

  test("is the same byte for byte when it is built again", async () => {
    const again = await writeWorkbook(computed(), names);
    expect(Buffer.compare(bytes, again)).toBe(0);
    expect(parts["docProps/core.xml"]).not.toContain(`${new Date().getUTCFullYear()}-`);
  });
});

test("borders are written with their lines and colours, on each side its own", async () => {
  const line = (left: BorderLine): Style => ({
    border: { left: "#aa0011", right: "#001122", bottom: "#000000" },
    borderLines: { left, bottom: "medium" },
  });
  const styles = Object.fromEntries(borderLines.map((one) => [one, line(one)]));
  const cells = Object.fromEntries(
    borderLines.map((style, row) => [row, { 0: { value: row, style } }]),
  );
  const book = { sheets: [{ name: "S", cells }], styles, tables: [], definedNames: [] };
  const { book: again } = await readWorkbook(await writeWorkbook(book, names), names);
  const written = borderLines.map((_, row) => again.sheets[0]?.cells[row]?.[0]?.style ?? "");
  expect(written.map((key) => again.styles[key])).toMatchObject(borderLines.map(line));
});

test("values that look like others are written as what they are", async () => {
  const error = { error: "#N/A" };
  const cells = {
    0: {
      0: { value: "12", formula: "T(B1)" },
      1: { value: "inf", formula: 'WETEND.X("inf")', spill: { rows: 1, columns: 4 } },
      2: { value: error, spilled: true },
      3: { value: "", spilled: true },
      4: { value: true, spilled: true },
      5: { value: error, formula: "NA()" },
      6: { value: "=1+1" },
      7: { value: null, formula: "A9" },
      8: { value: 0.1 + 0.2, formula: "0.1+0.2" },
    },
  };
  const book = { sheets: [{ name: "S", cells }], tables: [], styles: {}, definedNames: [] };
  const read = await readWorkbook(await writeWorkbook(book, names), names);
  const row = read.book.sheets[0]?.cells[0] ?? {};
  expect(Object.values(row).map(({ value }) => value)).toEqual([
    "12",
    "inf",
    error,
    "",
    true,
    error,
    "=1+1",
    null,
    0.1 + 0.2,
  ]);
  expect(row[0]?.formula).toBe("T(B1)");
  expect(row[6]?.formula).toBeUndefined();
});

test.each(plans)(
  "the formulas, names, tables and column widths of $id are read back as the plan lays them out",
  async (plan) => {
    const planned = layOut(plan);
    const all = functionNames(inject("functions").metadata.functions.map(({ id }) => id));
    const { book } = await readWorkbook(await writeWorkbook(planned, all), all);
    const formulasOf = (sheets: Book["sheets"]) =>
      sheets.map(({ name, cells }) => [
        name,
        Object.entries(cells).flatMap(([row, line]) =>
          Object.entries<Cell>(line)
            .filter(([, { formula }]) => formula !== undefined)
            .map(([column, { formula, spill }]) => [row, column, formula, spill]),
        ),
      ]);
    expect(formulasOf(book.sheets)).toEqual(formulasOf(planned.sheets));
    const widthsOf = (sheets: Book["sheets"]) =>
      sheets.map(({ columnWidths = {} }) => columnWidths);
    expect(widthsOf(book.sheets)).toEqual(widthsOf(planned.sheets));
    const sorted = (names: Book["definedNames"]) =>
      [...names].sort((a, b) => (a.name < b.name ? -1 : 1));
    expect(sorted(book.definedNames)).toEqual(sorted(planned.definedNames));
    expect(book.tables).toEqual(planned.tables.map(({ formulas: _, ...table }) => table));
  },
);
