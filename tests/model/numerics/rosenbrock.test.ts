import { expect, test } from "vitest";
import { StiffSolution, type StiffSystem } from "../../../src/model/numerics/rosenbrock";
import { expectRefusal } from "../expectations";

/** A single equation by its f and f′. */
const single = (
  f: (y: number) => number,
  slope: (y: number) => number,
  allowed = (y: number) => 1e-9 * Math.max(y, 1e-3),
): StiffSystem => {
  let diagonal = 1;
  return {
    size: 1,
    derivative: (y, into) => {
      into[0] = f(y[0] as number);
    },
    linearise: (y, pivot) => {
      diagonal = pivot - slope(y[0] as number);
    },
    solve: (side, into) => {
      into[0] = (side[0] as number) / diagonal;
    },
    allowed: (_, y) => allowed(y),
  };
};

const logistic = (allowed?: (y: number) => number) =>
  single(
    (y) => y * (1 - y),
    (y) => 1 - 2 * y,
    allowed,
  );
const logisticAt = (time: number) => 1 / (1 + 9 * Math.exp(-time));

test("follows a curve that is known in closed form", () => {
  const solution = new StiffSolution(logistic(), Float64Array.of(0.1), 1e-3);
  for (const time of [0, 0.5, 0.5, 3, 10]) {
    solution.advanceTo(time);
    expect(Math.abs((solution.y[0] as number) / logisticAt(time) - 1)).toBeLessThan(1e-8);
  }
});

test("is of order four: half the step, a sixteenth of the error", () => {
  const errorWith = (step: number) => {
    const solution = new StiffSolution(
      logistic(() => 1e6),
      Float64Array.of(0.1),
      step,
    );
    // Each stretch is exactly one step long, so that the step is what is said.
    for (let i = 1; i <= 2 / step; i++) solution.advanceTo(i * step);
    return Math.abs((solution.y[0] as number) - logisticAt(2));
  };
  const ratio = errorWith(1 / 32) / errorWith(1 / 64);
  expect(ratio).toBeGreaterThan(14);
  expect(ratio).toBeLessThan(18);
});

test("one enormous step lands on the slow solution of a stiff equation", () => {
  const stiff = single(
    (y) => -1e9 * (y - 1),
    () => -1e9,
    () => 1e6,
  );
  const solution = new StiffSolution(stiff, Float64Array.of(0), 1e9);
  solution.advanceTo(1e6);
  expect(Math.abs((solution.y[0] as number) - 1)).toBeLessThan(1e-12);
});

test("gives up on an equation without a solution instead of going on for ever", () => {
  const runaway = single(
    (y) => y * y,
    (y) => 2 * y,
  );
  const solution = new StiffSolution(runaway, Float64Array.of(1), 1e-3);
  expectRefusal("no answer", "cannot be followed to 2 s", () => solution.advanceTo(2));
});

test("gives up at once where no step is small enough for the clock to move", () => {
  const absurd = single(
    () => Number.NaN,
    () => Number.POSITIVE_INFINITY,
  );
  const solution = new StiffSolution(absurd, Float64Array.of(1), 0);
  expectRefusal("no answer", "cannot be followed to 2 s", () => solution.advanceTo(2));
});
