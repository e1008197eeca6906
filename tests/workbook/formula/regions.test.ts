import { describe, expect, test } from "vitest";
import { areaAddress } from "../../../src/workbook/address";
import type { Book } from "../../../src/workbook/book";
import { regionsOf } from "../../../src/workbook/formula/regions";
import { reachIn, withoutSpillMarks } from "../../../src/workbook/formula/spill-ranges";

const sheet = (name: string) => ({ name, cells: {} });
const book: Book = {
  sheets: [
    {
      name: "Log",
      cells: { 3: { 4: { value: 1, formula: "X()", spill: { rows: 4, columns: 2 } } } },
    },
    sheet("Jan"),
    sheet("Feb"),
    sheet("Mar"),
    sheet("It's a mill"),
  ],
  tables: [
    {
      name: "Days",
      sheet: "Jan",
      area: { row: 0, column: 0, rows: 9, columns: 2 },
      columns: ["Day", "Dose"],
      headerRow: true,
      totalsRow: false,
    },
  ],
  styles: {},
  definedNames: [
    { name: "price", formula: "Feb!$B$4" },
    { name: "price", formula: "Mar!$B$5", sheet: "Mar" },
    { name: "twice", formula: "price*2+Jan!$C$1" },
    { name: "circle", formula: "circle+Jan!$A$1" },
  ],
};

const read = (formula: string, home = "Log") =>
  regionsOf(formula, home, book).map(({ sheet: name, area }) => `${name}!${areaAddress(area)}`);

describe("the cells that a formula reads", () => {
  test.each([
    ["A1+B2", ["Log!A1", "Log!B2"]],
    ["SUM(B2:D9)", ["Log!B2:D9"]],
    ["SUM(D9:B2)", ["Log!B2:D9"]],
    ["SUM($C:$D)", ["Log!C1:D1048576"]],
    ["SUM(2:3)", ["Log!A2:XFD3"]],
    ["'It''s a mill'!A1", ["It's a mill!A1"]],
    ["SUM(Jan:Mar!A1)", ["Jan!A1", "Feb!A1", "Mar!A1"]],
    ["SUM(E4#)", ["Log!E4:F7"]],
    ["SUM(Days[Dose])", ["Jan!A1:B9"]],
    ["price", ["Feb!B4"]],
    ["TWICE", ["Feb!B4", "Jan!C1"]],
    ["circle", ["Jan!A1"]],
    ['"A1"&LOG10(C3)', ["Log!C3"]],
    ["[1]Jan!A1+Nowhere!A1", []],
  ])("%s", (formula, cells) => expect(read(formula)).toEqual(cells));

  test("a sheet's own name goes before the workbook's", () => {
    expect(read("price", "Mar")).toEqual(["Mar!B5"]);
  });
});

describe("the mark of a spill as the cells that it stands for", () => {
  const reach = reachIn(book, () => true);
  test.each([
    ["SUM(E4#)", "Log", "SUM(E4:F7)"],
    ["SUM($E$4#)*2", "Log", "SUM($E$4:$F$7)*2"],
    ["SUM(Log!E$4#)", "Jan", "SUM(Log!E$4:F$7)"],
    ["SUM(E4#)", "Jan", "SUM(E4#)"],
    ['"E4#"&A1', "Log", '"E4#"&A1'],
  ])("%s on %s", (formula, home, expected) =>
    expect(withoutSpillMarks(formula, home, reach)).toBe(expected),
  );

  test("stays where it is not asked for", () => {
    const none = reachIn(book, () => false);
    expect(withoutSpillMarks("SUM(E4#)", "Log", none)).toBe("SUM(E4#)");
  });
});
