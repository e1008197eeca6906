import { describe, expect, test } from "vitest";
import { openEngine } from "../../src/engine/node";
import { addressOf } from "../../src/workbook/address";
import type { Value } from "../../src/workbook/book";
import references from "../references/spreadsheet-formulas.json";
import { probe } from "./probe";
import { book, cell, sheet, shown } from "./sheet";

type Row = readonly [formula: string, expected: number | string | boolean];

const engine = openEngine(probe);
const log = Object.fromEntries(
  references.log.flatMap((row, down) =>
    row.map((value, across) => [addressOf(down, across), value as Value] as const),
  ),
);
const definedNames = Object.entries(references.names).map(([name, formula]) => ({ name, formula }));

async function wrongOf(rows: readonly Row[]): Promise<string[]> {
  const cells = Object.fromEntries(rows.map(([formula], at) => [`A${at + 1}`, `=${formula}`]));
  const sheets = [sheet("P", cells), sheet("Log", log), sheet("X", references.cells)];
  const result = await engine.recalculate(book(sheets, { definedNames }));
  return rows.flatMap(([formula, expected], at) => {
    const value = shown(result, `A${at + 1}`);
    return alike(value, expected) ? [] : [`${formula} = ${value}, not ${expected}`];
  });
}

/** Both sources give fifteen digits at least. */
function alike(value: unknown, expected: unknown): boolean {
  if (typeof value !== "number" || typeof expected !== "number") return value === expected;
  return !Object.is(value, -0) && Math.abs(value - expected) <= 2e-12 * Math.abs(expected);
}

describe("formulas of a mill's workbook give what every spreadsheet gives", () => {
  const byRule = references.byRule as unknown as Row[];
  // A book in which one is gone is computed twice, the second time with room for a million rows.
  const isReference = ([, expected]: Row) => expected === "#REF!";

  test("by the rules", async () => {
    expect(await wrongOf(byRule.filter((row) => !isReference(row)))).toEqual([]);
  });

  test("where a reference leads nowhere", async () => {
    expect(await wrongOf(byRule.filter(isReference))).toEqual([]);
  });

  test("by a second program", async () => {
    expect(await wrongOf(references.byProgram as unknown as Row[])).toEqual([]);
  });
});

describe("the mark # of a spilled range", () => {
  test.each([
    ["a number", "A1#", "#REF!"],
    ["a blank cell", "A9#", "#REF!"],
    ["a formula with one value", "SUM(B1#)", 7],
    ["a formula that spills", "SUM(C1#)", 6],
    ["a cell inside of a spill", "C2#", "#REF!"],
  ])("behind %s", async (_, formula, expected) => {
    const cells = { A1: 5, B1: "=7", C1: "=SEQUENCE(3)", E1: `=${formula}` };
    expect(shown(await engine.recalculate(book([sheet("S", cells)])), "E1")).toBe(expected);
  });
});

test("no formula changes the range that it sorts, for those that read it after", async () => {
  const cells = {
    A1: 3,
    A2: 1,
    A3: 2,
    B1: "=SUM(SORT(A1:A3))",
    C1: "=INDEX(A1:A3,1)",
    D1: "=B1+C1",
  };
  const result = await engine.recalculate(book([sheet("S", cells)]));
  expect(shown(result, "D1")).toBe(9);
});

test("a blank that a formula gives back is 0, wherever it spills", async () => {
  const result = await engine.recalculate(book([sheet("S", { A1: 1, A3: 3, C1: "=A1:A3" })]));
  expect([1, 2, 3].map((row) => cell(result, `C${row}`)?.value)).toEqual([1, 0, 3]);
});
