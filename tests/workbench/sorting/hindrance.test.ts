import { expect, test } from "vitest";
import { hindranceOf, type Surroundings } from "../../../src/workbench/sorting/hindrance";
import { parseArea } from "../../../src/workbook/address";

const clear: Surroundings = { spills: [], merged: [], tables: [] };
const told = (area: string, around: Partial<Surroundings>) =>
  hindranceOf(parseArea(area), { ...clear, ...around });
const areas = (...addresses: string[]) => addresses.map(parseArea);

test("rows with nothing in their way are sorted, one alone is not", () => {
  expect(told("A2:C9", {})).toBeUndefined();
  expect(told("A2:C2", {})).toBe("There are no two rows to sort here.");
});

test("a spilled array stays whole; an answer of one cell is no array", () => {
  expect(told("A2:C9", { spills: areas("E2:F9", "B3") })).toBeUndefined();
  expect(told("A2:C9", { spills: areas("C9:E12") })).toBe(
    "The formula in C9 fills C9:E12: rows with a part of that cannot be sorted.",
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
