import fc from "fast-check";
import { expect, test } from "vitest";
import { areaPartition } from "../../../src/model/partition/area";
import { equilibrium } from "../../../src/model/partition/equilibrium";
import { Refusal } from "../../../src/model/refusal";
import { apart, furnishes, spread, sum } from "./furnishes";

test("equal affinities leave the split to surface alone", () => {
  // By hand: areas 0.8·1 and 0.2·6 m², so 0.8/2 and 1.2/2.
  expect(apart(areaPartition([0.8, 0.2], [1, 6]), [0.4, 0.6])).toBeLessThan(1e-15);
});

test("affinity weighs the surface", () => {
  // By hand: 0.8·1·3 = 2.4 against 0.2·6·1 = 1.2.
  const [fibre, fines] = areaPartition([0.8, 0.2], [1, 6], [3, 1]) as [number, number];
  expect(fibre).toBeCloseTo(2 / 3, 15);
  expect(fines).toBeCloseTo(1 / 3, 15);
});

test("masses, surfaces and affinities count in any unit, and the split sums to 1", () => {
  fc.assert(
    fc.property(furnishes(), spread(1e-6, 1e6), ({ shares, surfaces, capacities }, unit) => {
      const split = areaPartition(shares, surfaces, capacities);
      expect(Math.abs(sum(split) - 1)).toBeLessThan(1e-12);
      const rescaled = areaPartition(
        shares.map((share) => share * unit),
        surfaces.map((surface) => surface / unit),
        capacities.map((affinity) => affinity * unit),
      );
      expect(apart(rescaled, split)).toBeLessThan(1e-12);
    }),
  );
});

test("is the limit of the Langmuir balance for a dose far below the filled sites", () => {
  fc.assert(
    fc.property(furnishes(8, [1, 100]), ({ shares, surfaces, capacities, halfLoads }) => {
      const affinities = capacities.map((capacity, i) => capacity / (halfLoads[i] as number));
      const filled = sum(shares.map((m, i) => m * (surfaces[i] ?? 0) * (capacities[i] ?? 0)));
      const dilute = equilibrium(filled * 1e-9, 0.03, shares, surfaces, capacities, halfLoads);
      const held = dilute.slice(0, -1);
      const byArea = areaPartition(shares, surfaces, affinities);
      expect(
        apart(
          held.map((amount) => amount / sum(held)),
          byArea,
        ),
      ).toBeLessThan(1e-6);
    }),
  );
});

test("a furnish without any surface is refused", () => {
  expect(() => areaPartition([0, 0], [1, 2])).toThrow(Refusal);
});
