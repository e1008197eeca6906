import { expect, it } from "vitest";
import { settlingTime } from "../../../src/model/trial/settling";
import { expectRelative } from "../expectations";

it("waits three turns of the purge until 5 % of a step is left, and not at all for all of it", () => {
  // e⁻³ = 0.0498: the trade's "three turns" (common practice, no source).
  expectRelative(settlingTime(300, 100, Math.exp(-3)), 9, 1e-14);
  expect(settlingTime(300, 100, 1)).toBe(0);
});
