import fc from "fast-check";
import { expect, test } from "vitest";
import { budget } from "../../../src/model/cost/budget";
import { Refusal } from "../../../src/model/refusal";

test("a period and the next, by hand", () => {
  // 1000 t·8 kg/t/0.8 = 10 000 kg at 0.60; 500 t·8 = 4000 kg at 0.65.
  const { periods, total } = budget([1000, 500], [8], [0.6, 0.65], [0.2, 0]);
  expect(periods).toEqual([
    { number: 1, output: 1000, quantity: 10000, cost: 6000, costPerTonne: 6, cumulative: 6000 },
    { number: 2, output: 500, quantity: 4000, cost: 2600, costPerTonne: 5.2, cumulative: 8600 },
  ]);
  expect(total).toEqual({
    output: 1500,
    quantity: 14000,
    cost: 8600,
    costPerTonne: 8600 / 1500,
    cumulative: 8600,
  });
});

const period = fc.record({
  output: fc.double({ min: 0, max: 1e5, noNaN: true }),
  dose: fc.double({ min: 0, max: 50, noNaN: true }),
  price: fc.double({ min: 0, max: 10, noNaN: true }),
  loss: fc.double({ min: 0, max: 0.5, noNaN: true }),
});

test("the periods add up to the total, to the cent", () => {
  fc.assert(
    fc.property(fc.array(period, { minLength: 1, maxLength: 24 }), (periods) => {
      const year = budget(
        periods.map(({ output }) => output),
        periods.map(({ dose }) => dose),
        periods.map(({ price }) => price),
        periods.map(({ loss }) => loss),
      );
      const added = year.periods.reduce((sum, { cost }) => sum + cost, 0);
      expect(Math.abs(added - year.total.cost)).toBeLessThan(0.005);
      expect(year.periods.at(-1)?.cumulative).toBe(year.total.cost);
      const reached = year.periods.reduce(
        (sum, { quantity }, i) => sum + quantity * (1 - (periods[i]?.loss ?? 0)),
        0,
      );
      const wanted = periods.reduce((sum, { output, dose }) => sum + output * dose, 0);
      expect(Math.abs(reached - wanted)).toBeLessThanOrEqual(1e-12 * wanted);
    }),
  );
});

test("a period without output has no cost per tonne", () => {
  expect(budget([0], [8], [0.6], [0]).periods[0]?.costPerTonne).toBeUndefined();
});

test("a dose for some periods only is refused", () => {
  const partial = () => budget([1, 1, 1], [8, 9], [0.6], [0]);
  expect(partial).toThrow(Refusal);
  expect(partial).toThrow("outputs has 3 values and doses has 2.");
});
