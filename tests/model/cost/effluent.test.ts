import { expect, test } from "vitest";
import { effluentCost } from "../../../src/model/cost/effluent";

test.each([
  // By hand: 10·0.3 = 3 kg lost, 3.3 kg of COD, at 0.4 a kg.
  [10, 0.7, 0.4, 1.1, 1.32],
  [10, 1, 0.4, 1.1, 0],
])(
  "a dose of %d with %d retained, at %d per kg COD and %d g/g, costs %d a tonne",
  (dose, retained, price, factor, expected) => {
    expect(effluentCost(dose, retained, price, factor)).toBeCloseTo(expected, 14);
  },
);
