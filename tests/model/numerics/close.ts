import { expect } from "vitest";

/** Expects a relative agreement, so that tiny values are held as tightly as large ones. */
export function expectClose(actual: number, expected: number, tolerance: number): void {
  const error = expected === 0 ? Math.abs(actual) : Math.abs(actual / expected - 1);
  expect(
    error,
    `${actual} against ${expected}: relative error ${error.toExponential(1)}`,
  ).toBeLessThanOrEqual(tolerance);
}
