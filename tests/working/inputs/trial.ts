import fc from "fast-check";
import {
  above,
  aboveShare,
  any,
  column,
  dose,
  type Inputs,
  left,
  number,
  oneOf,
  row,
  seed,
} from "./cells";

export const trialInputs: Inputs = {
  "TRIAL.LADDER": fc.tuple(
    number(0.1, 5),
    number(6, 50),
    fc.integer({ min: 2, max: 80 }),
    left(oneOf("even", "ratio")),
    left(fc.boolean()),
  ),
  "TRIAL.REPLICATES": fc.tuple(
    number(0.01, 0.2),
    number(0.02, 0.5),
    left(number(0.5, 0.95)),
    left(number(0.01, 0.2)),
    left(fc.integer({ min: 1, max: 6 })),
  ),
  "TRIAL.ORDER": fc.tuple(
    fc.integer({ min: 1, max: 12 }).chain((length) => row(length, dose)),
    fc.integer({ min: 1, max: 30 }),
    seed,
  ),
  "TRIAL.HANDSHEET": fc.tuple(
    dose,
    number(1e-4, 0.15),
    aboveShare,
    left(above),
    left(number(1e-3, 1)),
    left(fc.integer({ min: 1, max: 1000 })),
  ),
  "TRIAL.MAKEDOWN": fc.tuple(
    above,
    number(1e-3, 0.2),
    number(0.5, 1),
    left(number(0.5, 1)),
    left(number(0.8, 1.5)),
  ),
  "TRIAL.COMPARE": fc
    .record({
      levels: fc.constantFrom<(string | number)[]>(["blank", "a"], [0, 4, 8], ["x", 5, 10, 15]),
      batches: fc.integer({ min: 2, max: 4 }),
      sheets: fc.integer({ min: 1, max: 3 }),
      inBlocks: fc.boolean(),
      isOneLost: fc.boolean(),
    })
    .chain(({ levels, batches, sheets, inBlocks, isOneLost }) => {
      const made = levels.flatMap((level) =>
        Array.from({ length: batches * sheets }, (_, i) => ({
          level,
          batch: Math.floor(i / sheets),
        })),
      );
      const places = isOneLost ? made.slice(sheets) : made;
      const ofPlaces = (of: (place: (typeof places)[number]) => unknown) =>
        fc.constant(places.map((place) => [of(place)]));
      return fc.tuple(
        ofPlaces(({ level }) => level),
        column(places.length, number(20, 90)),
        inBlocks ? ofPlaces(({ batch }) => `day ${batch}`) : fc.constant(undefined),
        sheets > 1 ? ofPlaces(({ batch }) => batch) : fc.constant(undefined),
        left(fc.constant(levels[1])),
        left(number(0.01, 0.3)),
      );
    }),
  "TRIAL.SETTLING": fc.tuple(above, above, left(number(1e-4, 0.999))),
  "UNCERTAINTY.SAMPLE": fc
    .tuple(number(0, 10), number(0, 5), fc.boolean())
    .chain(([low, width, isNormal]) =>
      fc.tuple(
        fc.constant(low),
        isNormal ? fc.constant(low + width / 2) : number(low, low + width),
        fc.constant(low + width),
        fc.integer({ min: 1, max: 500 }),
        seed,
        isNormal ? fc.constant("normal") : left(oneOf("triangular", "uniform")),
        left(fc.integer({ min: 1, max: 9 })),
      ),
    ),
  "UNCERTAINTY.SUMMARY": fc.tuple(
    fc.integer({ min: 20, max: 200 }).chain((length) => row(length, any)),
    left(number(0.1, 0.95)),
  ),
  "UNCERTAINTY.DRIVERS": fc
    .tuple(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 1, max: 5 }))
    .chain(([results, columns]) =>
      fc.tuple(
        column(results, any),
        fc
          .array(row(columns, any), { minLength: results, maxLength: results })
          .map((rows) => rows.flat()),
        left(fc.constant([Array.from({ length: columns }, (_, i) => `driver ${i}`)])),
      ),
    ),
};
