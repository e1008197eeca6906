import { expect, test } from "vitest";
import type { SeenSheet } from "../../../src/workbench/sorting/block";
import { spillsBeside } from "../../../src/workbench/sorting/spills";
import { areaAddress, parseArea } from "../../../src/workbook/address";

/** A log with days in A2:A5, its formulas with what they fill beside it. */
function besideLog(formulas: Record<string, string>, days = "A2:A5") {
  const cells = new Map([1, 2, 3, 4].map((row) => [row, new Map([[0, { value: row }]])]));
  const sheet: SeenSheet = { name: "Log", cells, tables: [], frozenRows: 0, isBold: () => false };
  for (const [address, formula] of Object.entries(formulas)) {
    const { row, column, ...filled } = parseArea(address);
    const spill = filled.rows > 1 && { spill: filled };
    cells.get(row)?.set(column, { value: 0, formula, ...spill } as never);
  }
  return spillsBeside(sheet, parseArea(days)).map(({ area, ...is }) => ({
    ...is,
    area: areaAddress(area),
  }));
}

const alone = (area: string, byRow: boolean) => ({ area, alone: true, byRow });

test("a formula over the rows answers row by row, also from what another fills, also for some of them", () => {
  const formulas = { "B2:B5": "A2:A5*2", "C2:C5": "B2#+1" };
  const both = [alone("B2:B5", true), alone("C2:C5", true)];
  expect(besideLog(formulas)).toEqual(both);
  expect(besideLog(formulas, "A3:A4")).toEqual(both);
});

test("one that puts in order, picks, counts, or is shifted against the rows does not", () => {
  for (const formula of ["SORT(A2:A5)", "SEQUENCE(4)", "A1:A4-A6:A9"])
    expect(besideLog({ "B2:B5": formula })).toEqual([alone("B2:B5", false)]);
  for (const found of ["B2:B3", "B2"])
    expect(besideLog({ [found]: "FILTER(A2:A5,A2:A5>2)" })).toEqual([alone(found, false)]);
});

test("cells below or above it in its columns would be torn from their rows; an answer of one cell goes", () => {
  expect(besideLog({ "B2:B3": "A2:A3", B4: "A4" })).toEqual([
    { area: "B2:B3", alone: false, byRow: false },
  ]);
});

test("formulas of a row each go with their rows, whatever they answer today", () => {
  expect(besideLog({ B2: "FILTER(X2:Z2,X2:Z2>0)", B3: "FILTER(X3:Z3,X3:Z3>0)" })).toEqual([]);
});
