import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axisOf } from "../../../src/workbench/charts/axis";

describe("an axis", () => {
  test.each([
    ["starts at 0 for what rises from far below", [3, 12, 57], {}, 0, 60, 10],
    ["leaves 0 away where all lies close together", [98, 99, 101], {}, 97.5, 101.5, 0.5],
    ["has room above the highest", [0, 100], {}, 0, 120, 20],
    ["reaches below 0 with the values", [-40, 90], {}, -50, 100, 50],
    ["keeps both planned ends", [0.1, 0.7], { from: 0.3, to: 1 }, 0.3, 1, 0.1],
    ["keeps a planned start and counts from it", [30, 41], { from: 28 }, 28, 42, 2],
    ["shows something of a single 0", [0], {}, 0, 1.2, 0.2],
    ["shows something of nothing", [], {}, 0, 1.2, 0.2],
  ])("%s", (_, values, ends, from, to, step) => {
    const axis = axisOf(values, ends);
    expect([axis.from, axis.to]).toEqual([expect.closeTo(from, 9), expect.closeTo(to, 9)]);
    expect((axis.ticks[1] as number) - (axis.ticks[0] as number)).toBeCloseTo(step, 9);
  });

  test("holds every value, and has few round numbers on it, whatever the values", () => {
    const value = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 20 }), (values) => {
        const { from, to, ticks } = axisOf(values, {});
        const slack = 1e-6 * (to - from);
        expect(Math.min(...values)).toBeGreaterThanOrEqual(from - slack);
        expect(Math.max(...values)).toBeLessThanOrEqual(to + slack);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(11);
      }),
    );
  });
});
