import { describe, expect, it } from "vitest";
import { doseLadder } from "../../../src/model/trial/ladder";
import { expectRefusal, expectRelative } from "../expectations";

describe("the dose ladder", () => {
  it.each([
    ["even with a blank", [2, 10, 5, "even", true], [0, 2, 4, 6, 8, 10]],
    ["even without a blank, from 0", [0, 12, 4, "even", false], [0, 4, 8, 12]],
    ["a constant ratio", [1, 16, 5, "ratio", true], [0, 1, 2, 4, 8, 16]],
    ["a single step", [6, 6, 1, "even", true], [0, 6]],
  ] as const)("steps %s", (_, [lowest, highest, steps, spacing, blank], expected) => {
    const doses = doseLadder(lowest, highest, steps, spacing, blank);
    expect(doses).toHaveLength(expected.length);
    doses.forEach((dose, i) => {
      expectRelative(dose, expected[i] as number, 1e-15);
    });
  });

  it("ends on the very doses that were asked for", () => {
    const doses = doseLadder(0.1, 0.7, 7, "ratio", false);
    expect([doses[0], doses[6]]).toEqual([0.1, 0.7]);
  });

  it.each([
    ["Highest is 2 and lowest 5 kg/t", [5, 2, 3, "even", true]],
    ["Steps is 1 from 2 to 5 kg/t", [2, 5, 1, "even", true]],
    ["Lowest and highest are both 5 kg/t with 3 steps", [5, 5, 3, "even", true]],
    ["Lowest is 0 kg/t, which is the blank", [0, 5, 3, "even", true]],
    ["A constant ratio starts from a dose above 0", [0, 5, 3, "ratio", false]],
  ] as const)("refuses: %s", (words, [lowest, highest, steps, spacing, blank]) => {
    expectRefusal("impossible input", words, () =>
      doseLadder(lowest, highest, steps, spacing, blank),
    );
  });
});
