import { expect, test } from "vitest";
import { fromGrid, toGrid } from "../../../src/engine/dialect";
import { spellingOut } from "../../../src/engine/spelled-out";
import { writtenFormula } from "../../../src/workbench/book/written-formula";

const area = { row: 2, column: 0, rows: 11, columns: 2 };
const spellOut = spellingOut({
  definedNames: [{ name: "limit", formula: "Permit!$B$1", sheet: "Permit" }],
  tables: [
    {
      name: "Log",
      sheet: "Log",
      area,
      columns: ["Day", "Dose"],
      headerRow: true,
      totalsRow: false,
    },
  ],
});
const place = { sheet: "Log", row: 4, column: 3 };

/** What a cell holds of which this was written, and the grid now computes that. */
const nowWritten = (written: string, formula: string) =>
  writtenFormula(
    { formula: fromGrid(toGrid(formula)), value: null, data: { custom: { formula: written } } },
    spellOut,
    place,
  );

test.each([
  ["A4*Permit!limit", "A5*Permit!$B$1", "A5*Permit!limit"],
  ["Permit!limit", "Permit!$B$1", "Permit!limit"],
  ["SUM(Log[Dose], C4)/ 0.50", "SUM($B$4:$B$13,C5)/0.5", "SUM(Log[Dose], C5)/ 0.50"],
  ["Log[@Dose]*C4-Other!C4", "$B5*C5-'Other'!C6", "Log[@Dose]*C5-'Other'!C6"],
  ["SUM(Log)+sum(4:4)", "SUM($A$4:$B$13)+SUM(5:5)", "SUM(Log)+sum(5:5)"],
])("keeps its words when its cells have moved: %s", (written, formula, expected) => {
  expect(nowWritten(written, formula)).toBe(expected);
});

test.each([
  ["another cell than the name's", "A4*Permit!limit", "A5*Permit!$B$2"],
  ["another part of the table", "SUM(Log[Dose])+C4", "SUM($B$4:$B$12)+C5"],
  ["another function", "MAX(Log[Dose],C4)", "MIN($B$4:$B$13,C5)"],
  ["another number", "Log[@Dose]*C4*2", "$B5*C5*3"],
  ["more behind it", "Log[@Dose]*C4", "$B5*C5+1"],
  ["less", "Log[@Dose]*C4+1", "$B5*C5"],
])("is that of the grid with %s", (_, written, formula) => {
  expect(nowWritten(written, formula)).toBe(formula);
});
