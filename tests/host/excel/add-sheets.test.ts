import { describe, expect, test } from "vitest";
import { addressLists, styleAreas } from "../../../src/host/excel/style-areas";
import { withNamespace } from "../../../src/host/excel/write-cells";
import type { Sheet } from "../../../src/workbook/book";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { samplePlan } from "../../workbook/sample-plan";
import { startExcel } from "./start-excel";

const add = ({ host }: ReturnType<typeof startExcel>) =>
  host.addSheets((taken) => layOut(samplePlan, taken));

describe("adding the sheets of a plan", () => {
  test("writes every typed value and every formula of the plan to its place", async () => {
    const excel = startExcel();
    const names = await add(excel);
    const book = layOut(samplePlan);
    expect(names).toEqual(book.sheets.map(({ name }) => name));
    for (const sheet of book.sheets) {
      for (const [row, cells] of Object.entries(sheet.cells)) {
        for (const [column, { value, formula }] of Object.entries(cells)) {
          const at = `${String.fromCharCode(65 + Number(column))}${Number(row) + 1}`;
          const written = excel.fake.sheets.get(sheet.name)?.get(at);
          if (formula !== undefined) expect(written?.formula, at).toBe(`=${formula}`);
          else expect(written?.value, `${sheet.name} ${at}`).toEqual(value ?? undefined);
        }
      }
    }
  });

  test("makes its tables and names before the formulas that speak of them", async () => {
    const excel = startExcel();
    const seen: string[][] = [];
    excel.fake.compute = () => {
      seen.push([...excel.fake.names.keys(), ...excel.fake.tables.map(({ name }) => name)]);
      return 0;
    };
    await add(excel);
    expect(seen.length).toBeGreaterThan(4);
    for (const names of seen) expect(names).toEqual(expect.arrayContaining(["wanted", "log"]));
    expect(excel.fake.names.get("wanted")).toBe("=About!$B$4");
  });

  test("brings formats, validation, rules, charts, widths and the printed page along", async () => {
    const excel = startExcel();
    await add(excel);
    const done = excel.fake.done.join("\n");
    for (const part of [
      /About!A1\.format\.font\.bold = true/,
      /About!B6\.numberFormat = 0\.00/,
      /About!B4\.dataValidation\.rule = \{"decimal":\{"formula1":"=0\.1","formula2":"=50","operator":"Between"\}\}/,
      /About!B5\.dataValidation\.rule = \{"list":\{"inCellDropDown":true,"source":"exponential,hyperbolic"\}\}/,
      /About!B4\.dataValidation\.prompt = .*Oven-dry starch/,
      /About!B6\.conditionalFormats\.add\("Custom"\)\.custom\.rule\.formula = =AND\(ISNUMBER\(B6\),B6>wanted\*1\.4\)/,
      /About!B6\.conditionalFormats\.add\("Custom"\)\.custom\.rule\.formula = =ISERROR\(B6\)/,
      /Mill log\.charts\.add\("XYScatterLines", .*\)\.title\.text = Dose by day/,
      /Mill log\.freezePanes\.freezeAt\(Mill log!A1:A3\)/,
      /Mill log\.pageLayout\.orientation = Landscape/,
      /Mill log\.pageLayout\.setPrintTitleRows\("\$3:\$3"\)/,
      /Mill log\.pageLayout\.setPrintArea\("A1:F30"\)/,
      /Mill log\.pageLayout\.zoom = \{"horizontalFitToPages":1,"verticalFitToPages":1\}/,
      /About!A1\.format\.columnWidth = 182\.25/,
      /merge About!A2:D2/,
      /activate About/,
    ]) {
      expect(done).toMatch(part);
    }
  });

  test("takes free names for a second copy, and leaves the first as it is", async () => {
    const excel = startExcel();
    await add(excel);
    const before = structuredClone(excel.fake.sheets);
    const names = await add(excel);
    expect(names).toEqual(["About 2", "Mill log 2"]);
    for (const [name, cells] of before) expect(excel.fake.sheets.get(name)).toEqual(cells);
    expect([...excel.fake.names.keys()]).toEqual(expect.arrayContaining(["wanted", "wanted_2"]));
    expect(excel.fake.tables.map(({ name }) => name)).toEqual(["log", "log_2"]);
    expect(excel.fake.cell("'Mill log 2'!E4")?.formula).toBe(
      "=WETEND.DOSE.TARGET(wanted_2,log_2[[Overall retention (fraction)]])",
    );
  });

  test.each(["write formulas", "add name", "add table", "add sheet Mill log"])(
    "takes everything back when Excel stops at %s",
    async (step) => {
      const excel = startExcel();
      excel.fake.put("Sheet1!A1", { value: "mine" });
      excel.fake.names.set("mine", "=1");
      excel.fake.failing = { code: "GeneralException", before: new RegExp(step) };
      await expect(add(excel)).rejects.toMatchObject({ kind: "lost" });
      expect([...excel.fake.sheets.keys()]).toEqual(["Sheet1"]);
      expect([...excel.fake.names.keys()]).toEqual(["mine"]);
    },
  );

  test("says so where the workbook's structure is protected, and adds nothing", async () => {
    const excel = startExcel();
    excel.fake.structureProtected = true;
    await expect(add(excel)).rejects.toMatchObject({ kind: "protected" });
    expect([...excel.fake.sheets.keys()]).toEqual(["Sheet1"]);
  });

  test("is one step to undo", async () => {
    const excel = startExcel();
    await add(excel);
    expect(excel.fake.runs).toEqual([{ mergeUndoGroup: true }]);
  });

  test("writes our functions under the namespace that runs", async () => {
    const excel = startExcel({}, { namespace: "WETENDDEV" });
    await add(excel);
    expect(excel.fake.cell("'Mill log'!E4")?.formula).toMatch(/^=WETENDDEV\.DOSE\.TARGET\(/);
    expect(withNamespace('WETEND.DOSE.PUMP(1)&"WETEND.X("', "WETENDDEV")).toBe(
      'WETENDDEV.DOSE.PUMP(1)&"WETEND.X("',
    );
  });
});

describe("the cells of a style", () => {
  const sheet = (rows: readonly string[]): Sheet => ({
    name: "S",
    cells: Object.fromEntries(
      rows.map((line, row) => [
        row,
        Object.fromEntries(
          [...line].flatMap((style, column) =>
            style === " " ? [] : [[column, { value: null, ...(style === "-" ? {} : { style }) }]],
          ),
        ),
      ]),
    ),
  });
  const shown = (rows: readonly string[]) =>
    Object.fromEntries(
      [...styleAreas(sheet(rows))].map(([style, areas]) => [style, addressLists(areas)]),
    );

  test.each<[string, string[], Record<string, string[]>]>([
    ["a block is one area", ["aa", "aa", "aa"], { a: ["A1:B3"] }],
    ["a gap parts a row", ["aa aa"], { a: ["A1:B1,D1:E1"] }],
    ["unequal rows stay apart", ["aa", "a "], { a: ["A1:B1,A2"] }],
    ["a blank row parts a column", ["a", " ", "a"], { a: ["A1,A3"] }],
    ["two styles have their own areas", ["ab", "ab"], { a: ["A1:A2"], b: ["B1:B2"] }],
    ["a cell without style has none", ["-a"], { a: ["B1"] }],
  ])("%s", (_, rows, expected) => {
    expect(shown(rows)).toEqual(expected);
  });

  test("long lists are cut before Excel refuses them", () => {
    const areas = Array.from({ length: 2000 }, (_, row) => ({
      row: 2 * row,
      column: 0,
      rows: 1,
      columns: 1,
    }));
    const lists = addressLists(areas);
    expect(lists.every((list) => list.length <= 4000)).toBe(true);
    expect(lists.join(",").split(",")).toHaveLength(2000);
  });
});
