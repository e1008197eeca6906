import fc from "fast-check";
import { expect, test } from "vitest";
import { relativeAffinities } from "../../../src/model/partition/affinity";
import { areaPartition } from "../../../src/model/partition/area";
import { Refusal } from "../../../src/model/refusal";
import { apart, furnishes } from "./furnishes";

test("the first component is 1 and the others are amounts per area relative to it", () => {
  // By hand: 2 over 0.8 m² and 6 over 1.2 m² are 2.5 and 5.
  const [first, second] = relativeAffinities([2, 6], [0.8, 0.2], [1, 6]);
  expect(first).toBe(1);
  expect(second).toBeCloseTo(2, 14);
});

test("is the inverse of the partition by area", () => {
  fc.assert(
    fc.property(furnishes(), ({ shares, surfaces, capacities }) => {
      const relative = capacities.map((affinity) => affinity / (capacities[0] as number));
      const measured = areaPartition(shares, surfaces, relative);
      expect(apart(relativeAffinities(measured, shares, surfaces), relative)).toBeLessThan(1e-12);
    }),
  );
});

test.each([
  ["nothing was measured on the first component", [0, 1], [0.8, 0.2]],
  ["a component has no mass", [1, 1], [0.8, 0]],
])("is refused where %s", (_, measured, masses) => {
  expect(() => relativeAffinities(measured, masses, [1, 6])).toThrow(Refusal);
});
