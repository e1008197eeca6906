import fc from "fast-check";
import {
  above,
  aboveShare,
  any,
  dose,
  type Inputs,
  left,
  number,
  oneOf,
  seed,
  shape,
} from "./cells";

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

export const strengthInputs: Inputs = {
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
      points.blocks === undefined ? left(fc.constant(40)) : fc.constant(undefined),
      fc.constant(points.batches),
      fc.constant(points.blocks),
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
};
