import fc from "fast-check";
import {
  above,
  aboveShare,
  amount,
  any,
  dose,
  type Inputs,
  left,
  number,
  oneOf,
  price,
  row,
  rowOrOne,
  shape,
  share,
} from "./cells";

export const costInputs: Inputs = {
  "COST.ACTIVEPRICE": fc.tuple(price, aboveShare, left(aboveShare), left(number(0, 5))),
  "COST.ADDITIVE": fc.tuple(dose, price, above, left(amount)),
  "COST.REFINING": fc.tuple(number(0, 500), price, above, left(amount)),
  "COST.MARGINAL": fc.tuple(dose, price, number(-2, 100), number(5, 100), left(shape)),
  "COST.PARITY": fc.tuple(
    price,
    aboveShare,
    aboveShare,
    left(number(0, 5)),
    left(above),
    left(number(0, 5)),
  ),
  "COST.EFFLUENT": fc.tuple(dose, share, price, number(0, 8)),
  "COST.GRAMMAGE": fc.tuple(above, above, above, above, left(any)),
  "COST.MIX": fc
    .record({ options: fc.integer({ min: 1, max: 6 }), limited: fc.boolean() })
    .chain(({ options, limited }) =>
      fc.tuple(
        fc.oneof(fc.constant(0), number(0.1, 4)),
        row(options, number(2, 20)),
        row(options, number(1, 20)),
        row(options, price),
        row(options, number(5, 60)),
        left(rowOrOne(options, oneOf("exponential", "hyperbolic", "peaked", "straight"))),
        limited ? row(options, share) : fc.constant(undefined),
        limited ? number(5, 60) : fc.constant(undefined),
      ),
    ),
  "COST.BUDGET": fc
    .integer({ min: 1, max: 50 })
    .chain((periods) =>
      fc.tuple(
        row(periods, amount),
        rowOrOne(periods, dose),
        rowOrOne(periods, price),
        left(rowOrOne(periods, number(0, 0.9))),
        left(row(periods, fc.oneof(fc.integer(), fc.stringMatching(/^[a-z]{1,9}$/)))),
      ),
    ),
  "COST.VARIANCE": fc
    .integer({ min: 1, max: 13 })
    .chain((periods) =>
      fc.tuple(
        rowOrOne(periods, price),
        rowOrOne(periods, dose),
        rowOrOne(periods, amount),
        rowOrOne(periods, price),
        rowOrOne(periods, amount),
        rowOrOne(periods, amount),
      ),
    ),
};
