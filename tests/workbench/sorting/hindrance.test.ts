import { expect, test } from "vitest";
import { hindranceOf, type Surroundings } from "../../../src/workbench/sorting/hindrance";
import type { Spill } from "../../../src/workbench/sorting/spills";
import { parseArea } from "../../../src/workbook/address";

const clear: Surroundings = { spills: [], merged: [], tables: [] };
const told = (area: string, around: Partial<Surroundings>, column = 0) =>
  hindranceOf(parseArea(area), column, { ...clear, ...around });
const spill = (address: string, more: Partial<Spill> = {}): Spill => ({
  area: parseArea(address),
  alone: true,
  byRow: true,
  ...more,
});
const areas = (...addresses: string[]) => addresses.map(parseArea);

test("rows with nothing in their way are sorted, one alone is not", () => {
  expect(told("A2:C9", {})).toBeUndefined();
  expect(told("A2:C2", {})).toBe("There are no two rows to sort here.");
});

test("what a formula fills in columns of its own is no hindrance, beside cells that move", () => {
  expect(told("A2:C9", { spills: [spill("E2:F9", { alone: false })] })).toBeUndefined();
  expect(told("A2:C9", { spills: [spill("B2:B9"), spill("C2:C3")] }, 1)).toBeUndefined();
  for (const spills of [
    [spill("C8:C12", { alone: false })],
    [spill("C2:D2"), spill("B2:B9")],
    [spill("A2:B9"), spill("C2:C9")],
  ])
    expect(told("A2:C9", { spills }, 1)).toMatch(
      /^The formula in [AC][28] fills [A-D0-9]+:[A-D0-9]+: rows with a part of that cannot be sorted\.$/,
    );
});

test("rows are not sorted by answers that would not follow them", () => {
  const spills = [spill("B2:B9"), spill("C2:C3", { byRow: false })];
  expect(told("A2:C9", { spills }, 0)).toBeUndefined();
  expect(told("A2:C9", { spills }, 2)).toBe(
    "The formula in C2 does not answer row by row: sort by another column.",
  );
});

test("merged cells are sorted where they are alike in every row", () => {
  expect(told("A2:C3", { merged: areas("B2:C2", "B3:C3", "A1:C1") })).toBeUndefined();
  for (const merged of [areas("B2:C2"), areas("B2:C2", "A3:B3"), areas("A2:A3")])
    expect(told("A2:C3", { merged })).toMatch(
      /^The cells [A-C2-3:]+ are merged, and not in every row alike/,
    );
});

test("cells of a table are not torn out of it", () => {
  const tables = [{ name: "Runs", area: parseArea("C3:D8") }];
  expect(told("A2:C9", { tables })).toBe(
    "A2:C9 also holds cells of the table Runs: select those rows alone that are not beside it.",
  );
});
