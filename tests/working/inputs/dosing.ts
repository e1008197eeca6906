import fc from "fast-check";
import {
  above,
  aboveShare,
  amount,
  consistency,
  dose,
  type Inputs,
  left,
  number,
  oneOf,
  row,
  share,
} from "./cells";

const unit = oneOf("kg/t", "kg/t air-dry", "lb/short ton", "fraction", "g/t");

export const dosingInputs: Inputs = {
  "DOSE.TARGET": fc.tuple(dose, aboveShare),
  "DOSE.PRODUCT": fc.tuple(dose, aboveShare, left(aboveShare)),
  "DOSE.CONVERT": fc.tuple(dose, unit, unit, left(number(0, 0.9))),
  "DOSE.THROUGHPUT": fc.tuple(number(0, 2000), number(0.1, 12), above, left(number(0, 0.5))),
  "DOSE.STOCKFLOW": fc.tuple(amount, consistency, left(number(0.5, 2))),
  "DOSE.PUMP": fc.tuple(dose, number(0, 100), aboveShare, left(number(0.5, 2))),
  "DOSE.SURFACELIMIT": fc.integer({ min: 1, max: 6 }).chain((n) =>
    fc.tuple(
      fc
        .array(number(0.05, 1), { minLength: n, maxLength: n })
        .map((parts) => [parts.map((part) => part / parts.reduce((sum, one) => sum + one, 0))]),
      row(n, number(0.1, 30)),
      row(n, number(0.1, 20)),
    ),
  ),

  "CHARGE.SUBSTITUTION": fc.tuple(number(0, 0.05)),
  "CHARGE.NITROGEN": fc.tuple(number(0, 3)),
  "CHARGE.DENSITY": fc.tuple(number(0, 3)),
  "CHARGE.LIMIT": fc.tuple(amount, amount, number(1e-4, 0.25), above, left(number(0, 50))),

  "EFFLUENT.TREATMENT": fc.tuple(
    number(1e6, 2e6),
    amount,
    left(number(0, 5)),
    left(number(0, 5)),
    left(number(0, 5)),
    left(number(0, 5)),
    left(number(0.1, 3)),
    left(number(0.5, 3)),
    left(share),
  ),
  "EFFLUENT.LOSS": fc.tuple(dose, share, amount),
  "EFFLUENT.OXYGEN": fc.tuple(
    oneOf("C6H10O5", "C3H5NO", "C2H2O2", "CH3COONa", "C6H10O5(C6H14NOCl)0.035", "CuSO4·5H2O"),
    left(fc.boolean()),
  ),
  "EFFLUENT.COD": fc.tuple(dose, share, amount, number(0, 8)),
  "EFFLUENT.BOD": fc.tuple(dose, share, amount, number(0, 8)),
  "EFFLUENT.NITROGEN": fc.tuple(dose, share, amount, share),
  "EFFLUENT.CONCENTRATION": fc.tuple(amount, above),
  "EFFLUENT.ALLOWANCE": fc.tuple(
    number(1000, 1e5),
    number(0, 500),
    number(0, 0.99),
    number(1, 2000),
    number(0.1, 8),
    left(number(0, 0.99)),
    left(number(0, 0.5)),
  ),
  "EFFLUENT.EQUIVALENTS": fc.tuple(amount, left(number(0.01, 0.2))),
};
