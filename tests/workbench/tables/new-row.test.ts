import { expect, test } from "vitest";
import { isNewRow } from "../../../src/workbench/tables/new-row";
import { parseArea } from "../../../src/workbook/address";
import type { Book, Table, Value } from "../../../src/workbook/book";

const table: Table = {
  name: "Log",
  sheet: "S",
  area: parseArea("A1:C5"),
  columns: ["Additive", "Dose", "Share"],
  headerRow: true,
  totalsRow: false,
};
const book: Book = {
  sheets: [{ name: "S", cells: {} }],
  definedNames: [{ name: "doses", formula: "S!$B$2:$B$5" }],
  tables: [],
  styles: {},
};
const values: readonly (readonly Value[])[] = [
  ["starch", "filler", "size", "dye"],
  [4, 3, "n/a", null],
  [0.4, 0.3, 0.2, 0.1],
];

/** Typed into row 6, by the letters of its columns: a value, or a formula with what it would read in a longer table. */
function taken(
  typed: Record<string, Value | { formula: string; grown?: string; ofRow?: boolean }>,
  lastFormulas: Record<number, string> = {},
) {
  const entries = Object.entries(typed).map(([letter, entry]) => {
    const { column } = parseArea(`${letter}1`);
    if (typeof entry !== "object" || entry === null || "error" in entry)
      return { column, value: entry };
    return { column, value: null, grown: entry.formula, ...entry };
  });
  return isNewRow(entries, {
    table,
    row: 5,
    book,
    valuesOf: (column) => values[column] ?? [],
    lastFormula: (column) => lastFormulas[column],
  });
}

test("values and formulas of its own row make a new row", () => {
  for (const typed of [{ A: "dye 2" }, { B: 5 }, { A: "clay", B: "n/a", C: 0.1 }, { B: "<0.5" }])
    expect(taken(typed)).toBe(true);
  for (const formula of ["B5+1", "B6*2", "B6/SUM(Z$2:Z$5)", "ROWS(B$2:B6)", "SUM($B$2:B6)", "1+2"])
    expect(taken({ C: { formula } })).toBe(true);
});

test("a formula over several rows of the table is a total, wherever in the row it stands", () => {
  const totals = [
    "SUM(B2:B5)",
    "SUBTOTAL(109,$B$2:$B$5)",
    "AVERAGE(B4:B5)",
    "SUM(doses)",
    "SUM(B:B)",
  ];
  for (const formula of totals) expect(taken({ B: { formula } })).toBe(false);
  expect(taken({ A: { formula: "COUNTA(A2:A5)" }, B: 3 })).toBe(false);
  expect(taken({ C: { formula: "SUM(B2:B5)" } })).toBe(false);
  expect(taken({ B: { formula: "SUM(Other!B2:B5)" } })).toBe(true);
});

test("a formula that names its own row is one of the table, whatever else it reads", () => {
  const formula = "#VALUE!/SUM($B$2:$B$5)";
  expect(taken({ C: { formula } })).toBe(false);
  expect(taken({ C: { formula, ofRow: true } })).toBe(true);
});

test("a formula that would read itself in a longer table is a total, also of one row", () => {
  expect(taken({ B: { formula: "SUM($B$5)", grown: "SUM($B$5:$B$6)" } })).toBe(false);
  expect(taken({ C: { formula: "#VALUE!*2", grown: "$B6*2" } })).toBe(true);
});

test("the formula of the last row, filled down, makes a new row whatever it reads", () => {
  const share = { C: { formula: "AVERAGE(B3:B5)" } };
  expect(taken(share)).toBe(false);
  expect(taken(share, { 2: "AVERAGE(B2:B4)" })).toBe(true);
});

test("a row that begins with the word for a total is none, and below numbers what names one", () => {
  for (const label of ["Total", "total:", "Grand total", "Subtotal", "Mean", "Total for June"])
    expect(taken({ A: label, B: 9 })).toBe(false);
  for (const label of ["Mean of them", "Average dose", "All of them:"])
    expect(taken({ B: label })).toBe(false);
  for (const name of ["Totalizer resin", "Meanwhile", "Summit 3", "Mean machine", "Note:"])
    expect(taken({ A: name })).toBe(true);
});

test("a word below numbers is what was found in its row", () => {
  for (const word of ["n/a", "N/A", "broken", "not measured", "Meanwhile lost", "?"])
    expect(taken({ B: word })).toBe(true);
});
