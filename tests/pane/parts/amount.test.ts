import { expect, test } from "vitest";
import { known, shown } from "../../../src/pane/parts/amount";

test.each([
  [2455.4455446, "2455.45"],
  [-0.5, "−0.5"],
  [1e-9, "1e−9"],
  [Number.NaN, "no number"],
  [true, "TRUE"],
  ["kg/t", "kg/t"],
  [null, ""],
])("%s is shown as %s", (value, text) => {
  expect(shown(value)).toBe(text);
});

test("money is shown to the cent, its thousands apart", () => {
  expect(shown(824165.0331, "money")).toBe("824,165.03");
  expect(shown(-1234567.891, "money")).toBe("−1,234,567.89");
  expect(shown(-0.001, "money")).toBe("0.00");
  expect(shown(0.78, "money/kg")).toBe("0.78");
});

test("a number of the library shows the four figures that are known", () => {
  expect(known(1.184080523)).toBe("1.184");
  expect(known("cationic")).toBe("cationic");
});
