import { dosePerScale, type Shape, scaleOf, unitCurves } from "../../model/strength/response";
import {
  difference,
  type Expression,
  exponential,
  negative,
  number,
  power,
  product,
  quotient,
  sum,
  valued,
} from "../expression";
import { type Step, step } from "../step";

/** A dose as the shapes take it. */
export const relativeDose = (dose: number, scale: number, shape: Shape): Step =>
  step(
    "Dose over the scale of the curve",
    shape === "straight" ? dose : quotient(dose, scaleOf(scale, shape)),
    shape === "straight" ? "kg/t" : "times",
  );

/** How much of its gain a response has risen to, 0 at no dose. */
export function rise(dose: number, scale: number, shape: Shape): Expression {
  const t = dosePerScale(dose, scale, shape);
  return valued(RISES[shape](t), unitCurves[shape].rise(t));
}

const RISES: Readonly<Record<Shape, (t: number) => Expression>> = {
  exponential: (t) => difference(1, exponential(negative(t))),
  hyperbolic: (t) => quotient(t, sum(1, t)),
  peaked: (t) => product(t, exponential(difference(1, t))),
  straight: number,
};

/** How fast it rises there, per gain and per unit of its scale. */
export function slopeOfRise(dose: number, scale: number, shape: Shape): Expression {
  const t = dosePerScale(dose, scale, shape);
  return valued(SLOPES[shape](t), unitCurves[shape].slope(t));
}

const SLOPES: Readonly<Record<Shape, (t: number) => Expression>> = {
  exponential: (t) => exponential(negative(t)),
  hyperbolic: (t) => quotient(1, power(sum(1, t), 2)),
  peaked: (t) => product(difference(1, t), exponential(difference(1, t))),
  straight: () => number(1),
};
