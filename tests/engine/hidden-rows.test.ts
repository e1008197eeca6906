/**
 * SUBTOTAL and AGGREGATE over rows that are hidden, by hand and by a filter. SUBTOTAL is worked by hand from
 * ECMA-376 Part 4: rows that a filter leaves out are ignored whatever the function number; those that are hidden
 * otherwise are included by 1 to 11 and excluded by 101 to 111. OpenFormula 1.2 says the same. That neither knows
 * AGGREGATE is from memory. It is worked from the table of options at WorksheetFunction.Aggregate in Microsoft's
 * reference (learn.microsoft.com, ff195373), by which 1, 3, 5 and 7 ignore hidden rows, 2, 3, 6 and 7 error values,
 * 0 to 3 nested SUBTOTAL and AGGREGATE functions, and 4 nothing. It says nothing of filters: that a row under one is
 * a hidden row, so that 0, 2, 4 and 6 take it, is our reading.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { openEngine } from "../../src/engine/node";
import type { Recalculation } from "../../src/engine/recalculation";
import { parseArea } from "../../src/workbook/address";
import type { Filter } from "../../src/workbook/filter";
import { probe } from "./probe";
import { book, sheet, shown } from "./sheet";

const filter: Filter = {
  area: parseArea("A1:A6"),
  columns: [{ column: 0, criterion: { kind: "other", xml: "" } }],
};

/** Of 1, 2, 4, 8, 16 in A2:A6 a filter hides the 2 and the 8; of 32 and 64 below it the 64 is hidden by hand. */
const cells = {
  A1: "Dose", A2: 1, A3: 2, A4: 4, A5: 8, A6: 16, A8: 32, A9: 64,
  C1: "=SUBTOTAL(9,A2:A9)", C2: "=SUBTOTAL(109,A2:A9)", C3: "=SUBTOTAL(2,A2:A9)", C4: "=SUBTOTAL(102,A2:A9)",
  C5: "=SUBTOTAL(1,A2:A6)", C6: "=SUBTOTAL(4,A2:A6)", C8: "=SUM(A2:A9)", C9: "=AGGREGATE(9,5,A2:A9)",
  C10: "=SUBTOTAL(9,C1:C9)",
}; // biome-ignore format: a sheet
const log = { ...sheet("Log", cells), hiddenRows: [2, 4, 8], filter };

describe("of rows that are hidden", () => {
  let computed: Recalculation;

  beforeAll(async () => {
    computed = await openEngine(probe).recalculate(book([log]));
  });

  test.each([
    ["a subtotal leaves out those under a filter", "C1", 1 + 4 + 16 + 32 + 64],
    ["and from 101 on the others, too", "C2", 1 + 4 + 16 + 32],
    ["a count leaves out those under a filter", "C3", 5],
    ["and from 101 on the others, too", "C4", 4],
    ["a mean is one of those that show", "C5", (1 + 4 + 16) / 3],
    ["a sum takes all", "C8", 127],
    ["an aggregate without hidden rows takes none", "C9", 53],
    ["a subtotal over subtotals counts nothing twice", "C10", 127],
  ])("%s", (_, address, value) => {
    expect(shown(computed, address)).toBe(value);
  });

  test("a filter that asks for nothing hides none: those are hidden by hand", async () => {
    const open = { ...log, filter: { ...filter, columns: [] } };
    const { book: other } = await openEngine(probe).recalculate(book([open]));
    expect(shown(other, "C1")).toBe(127);
    expect(shown(other, "C2")).toBe(53);
  });

  test("the filter of a table counts as that of a sheet", async () => {
    const { filter: _, ...bare } = log;
    const table = { name: "Doses", sheet: "Log", area: parseArea("A1:A6"), columns: ["Dose"] };
    const tables = [{ ...table, headerRow: true, totalsRow: false, filter }];
    const { book: other } = await openEngine(probe).recalculate(book([bare], { tables }));
    expect(shown(other, "C1")).toBe(117);
  });
});

/** As above, with a subtotal in row 7, and in column B an error in row 8; what stands in row 9 is hidden by hand. */
const aggregated = {
  A1: "Dose", A2: 1, A3: 2, A4: 4, A5: 8, A6: 16, A7: "=SUBTOTAL(9,A2:A6)", A9: 64,
  B2: 1, B3: 2, B4: 4, B5: 8, B6: 16, B7: "=SUBTOTAL(9,A2:A6)", B8: "=1/0", B9: 64,
  D7: "=SUBTOTAL(9,B8:B8)", D9: 64,
}; // biome-ignore format: a sheet

/** Shown, under the filter, hidden by hand, and the subtotal of those that show. */
const [shows, filtered, byHand, nested] = [1 + 4 + 16, 2 + 8, 64, 21];

test.each([
  ["AGGREGATE(9,0,A2:A9)", shows + filtered + byHand],
  ["AGGREGATE(9,1,A2:A9)", shows],
  ["AGGREGATE(9,2,B2:B9)", shows + filtered + byHand],
  ["AGGREGATE(9,3,B2:B9)", shows],
  ["AGGREGATE(9,4,A2:A9)", shows + filtered + byHand + nested],
  ["AGGREGATE(9,5,A2:A9)", shows + nested],
  ["AGGREGATE(9,6,B2:B9)", shows + filtered + byHand + nested],
  ["AGGREGATE(9,7,B2:B9)", shows + nested],
  ["SUM(AGGREGATE(9,{0,1},A2:A9))", shows + filtered + byHand + shows],
  ["AGGREGATE(9,1,B2:B9)", "#DIV/0!"],
  ["AGGREGATE(9,5,B2:B9)", "#DIV/0!"],
  ["AGGREGATE(2,4,B2:B9)", 7],
  ["AGGREGATE(2,5,B2:B9)", 4],
  ["AGGREGATE(3,4,B2:B9)", 8],
  ["AGGREGATE(3,5,B2:B9)", 5],
  ["AGGREGATE(3,6,B2:B9)", 7],
  ["AGGREGATE(3,3,B2:B9)", 3],
  ["AGGREGATE(14,4,A2:A9,1)", 64],
  ["AGGREGATE(14,5,A2:A9,1)", nested],
  ["AGGREGATE(14,1,A2:A9,1)", 16],
  ["AGGREGATE(15,7,B2:B9,2)", 4],
  ["AGGREGATE(14,1,B2:B9,1)", "#DIV/0!"],
  ["AGGREGATE(14,0,D6:D9,1)", 64],
  ["AGGREGATE(14,4,D6:D9,1)", "#DIV/0!"],
])("=%s takes what its option lets it", async (formula, value) => {
  const cells = { ...aggregated, F1: `=${formula}` };
  const { book: computed } = await openEngine(probe).recalculate(
    book([{ ...log, ...sheet("Log", cells) }]),
  );
  expect(shown(computed, "F1")).toBe(value);
});
