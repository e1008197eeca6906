import fc from "fast-check";
import { expect, test } from "vitest";
import { pixelsOfPoints, pointsOfPixels } from "../../../src/workbench/book/grid-book";

test("heights of rows come back from the grid as they were", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40_900 }), (hundredths) => {
      const points = hundredths / 100;
      expect(pointsOfPixels(pixelsOfPoints(points))).toBe(points);
    }),
  );
});

test("a row has room for the lines of the grid, which stand farther apart than 15 points", () => {
  expect(pixelsOfPoints(15)).toBeGreaterThan(22);
});
