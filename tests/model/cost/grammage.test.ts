import fc from "fast-check";
import { expect, test } from "vitest";
import { grammageSaving } from "../../../src/model/cost/grammage";

test("strength gained is fibre saved", () => {
  // By hand: 3.6 kN/m at 60 and 64 N·m/g is 60 and 56.25 g/m²; 3.75 kg at 600 a tonne, less 56.25 kg at 20.
  const { before, after, fibreSaved, netSaving } = grammageSaving(3.6, 60, 64, 600, 20);
  expect(before).toBeCloseTo(60, 12);
  expect(after).toBeCloseTo(56.25, 12);
  expect(fibreSaved).toBeCloseTo(3.75, 12);
  expect(netSaving).toBeCloseTo(2.25 - 1.125, 12);
});

test("the strength of the sheet is the same before and after", () => {
  const index = fc.double({ min: 10, max: 120, noNaN: true });
  fc.assert(
    fc.property(index, index, (old, fresh) => {
      const { before, after } = grammageSaving(3.6, old, fresh, 600, 0);
      expect(Math.abs(after * fresh - before * old)).toBeLessThan(1e-9);
    }),
  );
});

test("a weaker sheet costs fibre", () => {
  expect(grammageSaving(3.6, 60, 50, 600, 0).netSaving).toBeLessThan(0);
});
