import fc from "fast-check";

/** What a host hands over for one call of a function: each argument's cells, undefined where left out. */
export type Given = fc.Arbitrary<readonly unknown[]>;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const left = <T>(given: fc.Arbitrary<T>) => fc.option(given, { nil: undefined });
const oneOf = (...texts: readonly string[]) => fc.constantFrom(...texts);
const row = (length: number, cell: fc.Arbitrary<unknown>) =>
  fc.array(cell, { minLength: length, maxLength: length }).map((cells) => [cells]);
/** A row of cells, or one cell that stands for all. */
const rowOrOne = (length: number, cell: fc.Arbitrary<unknown>) => fc.oneof(cell, row(length, cell));

const any = number(-1e6, 1e6);
const amount = number(0, 1e6);
const above = number(1e-3, 1e4);
const share = number(0, 1);
const aboveShare = number(1e-3, 1);
const dose = number(0, 50);
const price = number(0.01, 20);
const seed = fc.integer({ min: 0, max: 4_294_967_295 });

const shape = oneOf("exponential", "hyperbolic", "peaked", "straight");

/** A ladder of doses with the strengths of a curve and their scatter, perhaps by batches and blocks. */
const measured = fc
  .record({
    steps: fc.integer({ min: 5, max: 9 }),
    times: fc.integer({ min: 1, max: 3 }),
    gain: number(0, 20),
    scale: number(1, 10),
    scatter: number(0.01, 1),
    grouping: oneOf("none", "batches", "blocks"),
  })
  .chain(({ steps, times, gain, scale, scatter, grouping }) =>
    fc
      .array(number(-1, 1), { minLength: steps * times, maxLength: steps * times })
      .map((errors) => {
        const places = errors.map((error, i) => ({ error, x: 2 * (i % steps), turn: i / steps }));
        const column = (of: (place: (typeof places)[number]) => unknown) =>
          places.map((place) => [of(place)]);
        return {
          doses: column(({ x }) => x),
          strengths: column(
            ({ error, x }) => 40 + gain * (1 - Math.exp(-x / scale)) + scatter * error,
          ),
          batches: grouping === "batches" ? column(({ x }) => `batch ${x}`) : undefined,
          blocks:
            grouping === "blocks" ? column(({ turn }) => `day ${Math.floor(turn)}`) : undefined,
        };
      }),
  );

const ownTable = fc.constant([
  ["name", "COD factor [g/g]", "kind"],
  ["My starch", 1.07, "native starch"],
  ["Guar gum", 1.2, ""],
]);

/** Inputs as people may give them, within what each argument allows. */
export const inputs: Readonly<Record<string, Given>> = {
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

  "STRENGTH.INDEX": fc.tuple(above, above),
  "STRENGTH.LENGTH": fc.tuple(above),
  "STRENGTH.PAGE": fc.tuple(above, above, above, above, above, aboveShare),
  "STRENGTH.RESPONSE": fc.tuple(dose, any, number(-50, 100), number(0.01, 1e3), left(shape)),
  "STRENGTH.FIT": measured.chain((points) =>
    fc.tuple(
      fc.constant(points.doses),
      fc.constant(points.strengths),
      left(fc.oneof(shape, fc.constant("best"))),
      points.blocks === undefined ? left(fc.constant(40)) : fc.constant(undefined),
      fc.constant(points.batches),
      fc.constant(points.blocks),
    ),
  ),
  "STRENGTH.BAND": measured.chain((points) =>
    fc.tuple(
      dose,
      fc.constant(points.doses),
      fc.constant(points.strengths),
      left(shape),
      points.blocks === undefined ? left(fc.constant(40)) : fc.constant(undefined),
      left(number(0.5, 0.999)),
      fc.constant(points.batches),
      fc.constant(points.blocks),
    ),
  ),
  "STRENGTH.SAMPLE": measured.chain((points) =>
    fc.tuple(
      fc.constant(points.doses),
      fc.constant(points.strengths),
      fc.integer({ min: 1, max: 50 }),
      seed,
      left(shape),
      left(fc.constant(40)),
    ),
  ),
  "STRENGTH.DOSEFOR": fc.tuple(
    number(35, 60),
    number(30, 45),
    number(5, 30),
    number(0.1, 30),
    left(shape),
    left(number(1, 1e3)),
  ),
  "REFINING.ENERGY": fc.tuple(number(500, 2000), number(0, 400), above),
  "REFINING.EDGELOAD": fc.tuple(number(500, 2000), number(0, 400), above, above),

  "COST.ACTIVEPRICE": fc.tuple(price, aboveShare, left(aboveShare), left(number(0, 5))),
  "COST.ADDITIVE": fc.tuple(dose, price, above, left(amount)),
  "COST.REFINING": fc.tuple(number(0, 500), price, above, left(amount)),
  "COST.MARGINAL": fc.tuple(dose, price, number(-2, 100), number(5, 100), left(shape)),
  "COST.PARITY": fc.tuple(price, aboveShare, aboveShare, left(number(0, 5)), left(above)),
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
    })
    .chain(({ levels, batches, sheets, inBlocks }) => {
      const places = levels.flatMap((level) =>
        Array.from({ length: batches * sheets }, (_, i) => ({
          level,
          batch: Math.floor(i / sheets),
        })),
      );
      const column = (of: (place: (typeof places)[number]) => unknown) =>
        fc.constant(places.map((place) => [of(place)]));
      return fc.tuple(
        column(({ level }) => level),
        row(places.length, number(20, 90)).map(([cells]) => (cells as unknown[]).map((c) => [c])),
        inBlocks ? column(({ batch }) => `day ${batch}`) : fc.constant(undefined),
        sheets > 1 ? column(({ batch }) => batch) : fc.constant(undefined),
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
        row(results, any).map(([cells]) => (cells as unknown[]).map((cell) => [cell])),
        fc
          .array(row(columns, any), { minLength: results, maxLength: results })
          .map((rows) => rows.flat()),
        left(fc.constant([Array.from({ length: columns }, (_, i) => `driver ${i}`)])),
      ),
    ),

  "LIBRARY.ADDITIVES": fc.tuple(left(oneOf("starch", "gum", "Native starch")), left(ownTable)),
  "LIBRARY.ADDITIVE": fc.tuple(
    oneOf("Guar gum", "Native maize starch", "Glyoxalated polyacrylamide", "My starch"),
    oneOf("COD factor", "charge density", "formula", "typical dose", "nitrogen"),
    left(ownTable),
  ),
  "LIBRARY.COMPONENTS": fc.tuple(left(ownTable)),
  "LIBRARY.COMPONENT": fc.tuple(
    oneOf("Kaolin", "Secondary fines", "Talc"),
    oneOf("kind", "specific surface", "ash factor", "half load", "charge"),
  ),
  "LIBRARY.SOURCE": fc.tuple(
    oneOf("Kaolin", "Guar gum", "My starch", "Primary fines"),
    oneOf("kind", "COD factor", "specific surface", "surface against fibre", "charge density"),
    left(ownTable),
  ),
  "LIBRARY.SAFETY": fc.tuple(
    oneOf("Cooking", "spills", "Kaolin", "Carboxymethyl cellulose", "Xanthan gum", "Effluent"),
  ),
  "LIBRARY.VERSION": fc.constant([]),
};
