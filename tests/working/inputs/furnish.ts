import fc from "fast-check";
import {
  above,
  aboveShare,
  amount,
  column,
  consistency,
  dose,
  type Inputs,
  left,
  number,
  row,
  rowOrOne,
  share,
} from "./cells";

const components = fc.integer({ min: 1, max: 6 });
const surface = number(0.1, 30);

/** Shares that sum to 1, and surface, capacity and half load of each component. */
const furnish = (n: number) =>
  [
    fc
      .array(number(0.05, 1), { minLength: n, maxLength: n })
      .map((parts) => [parts.map((part) => part / parts.reduce((sum, one) => sum + one, 0))]),
    row(n, surface),
    row(n, number(0.1, 20)),
    row(n, number(0.1, 100)),
  ] as const;

export const furnishInputs: Inputs = {
  "PARTITION.AREA": components.chain((n) =>
    fc.tuple(row(n, above), row(n, surface), left(row(n, number(0.1, 10)))),
  ),
  "PARTITION.AFFINITY": components.chain((n) =>
    fc.tuple(row(n, above), row(n, above), row(n, surface)),
  ),
  "PARTITION.EQUILIBRIUM": components.chain((n) => fc.tuple(dose, consistency, ...furnish(n))),
  "PARTITION.ORDERED": fc
    .tuple(components, fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 }))
    .chain(([n, doses, positions]) =>
      fc.tuple(
        row(doses, dose),
        row(doses, fc.integer({ min: 1, max: positions })),
        fc
          .array(fc.integer({ min: 1, max: positions }), { minLength: n, maxLength: n })
          .map((places) => [[positions, ...places.slice(1)]]),
        consistency,
        ...furnish(n),
        left(share),
      ),
    ),
  "PARTITION.TIMED": components.chain((n) =>
    fc.tuple(
      fc.integer({ min: 1, max: 4 }).chain((times) => column(times, number(0, 600))),
      dose,
      consistency,
      ...furnish(n),
      row(n, number(1e-4, 0.1)),
    ),
  ),

  "RETENTION.FIRSTPASS": fc.tuple(number(0.5, 1), number(0.01, 0.4), left(number(0.5, 1.2))),
  "RETENTION.COMPONENT": fc.tuple(
    number(0.5, 1),
    number(0.3, 1),
    number(0.01, 0.2),
    share,
    left(number(0.5, 1.2)),
  ),
  "RETENTION.ADDITIVE": components.chain((n) =>
    fc.tuple(row(n, number(0.01, 50)), row(n, share), left(dose), left(share)),
  ),
  "RETENTION.LOOP": fc.tuple(aboveShare, share, share),
  "RETENTION.OVERALL": components.chain((n) =>
    fc.tuple(row(n, number(0.01, 50)), row(n, aboveShare), rowOrOne(n, share), rowOrOne(n, share)),
  ),
  "RETENTION.BALANCE": fc.tuple(dose, aboveShare, share, share),
  "RETENTION.WHITEWATER": fc.tuple(
    amount,
    fc.oneof(fc.constant(0), number(0.01, 500)),
    left(number(1, 5000)),
    left(number(0, 100)),
    left(number(1e-9, 1)),
  ),
};
