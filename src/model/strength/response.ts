import { impossible } from "../refusal";

/**
 * How strength answers to a dose, in four shapes. With t = x/scale (t = x where it is straight),
 *
 *   S = base + gain·f(t),   ∂S/∂x = gain·f′(t)/scale,   ∂S/∂ln(scale) = −gain·t·f′(t)
 *
 * so that a shape is known by f and f′ alone; its turn −t·f′(t) is given from f, for fits. All start at
 * f(0) = 0. Exponential and hyperbolic rise towards 1 and never reach it; peaked reaches 1 at t = 1 and
 * falls again; straight has no end.
 *
 * Source: the classic growth and saturation curves as in Bates & Watts, Nonlinear Regression Analysis
 * and Its Applications (1988), appendix 1 (exponential: oxygen demand; hyperbolic: Michaelis–Menten);
 * peaked is Ricker's curve, J. Fish. Res. Board Can. 11 (1954) 559, scaled to a height of 1.
 */
export const shapes = ["exponential", "hyperbolic", "peaked", "straight"] as const;
export type Shape = (typeof shapes)[number];

export interface UnitCurve {
  readonly rise: (t: number) => number;
  readonly slope: (t: number) => number;
  /** f″(t) */
  readonly bend: (t: number) => number;
  /** −t·f′(t), from t and the rise that is already at hand. */
  readonly turn: (t: number, rise: number) => number;
}

export const unitCurves: Readonly<Record<Shape, UnitCurve>> = {
  exponential: {
    rise: (t) => -Math.expm1(-t),
    slope: (t) => Math.exp(-t),
    bend: (t) => -Math.exp(-t),
    turn: (t, rise) => t * (rise - 1),
  },
  hyperbolic: {
    rise: (t) => t / (1 + t),
    slope: (t) => 1 / ((1 + t) * (1 + t)),
    bend: (t) => -2 / (1 + t) ** 3,
    turn: (_, rise) => rise * (rise - 1),
  },
  peaked: {
    rise: (t) => t * Math.exp(1 - t),
    slope: (t) => (1 - t) * Math.exp(1 - t),
    bend: (t) => (t - 2) * Math.exp(1 - t),
    turn: (t, rise) => rise * (t - 1),
  },
  straight: { rise: (t) => t, slope: () => 1, bend: () => 0, turn: (t) => -t },
};

/** Strength gained over the base at a dose. A straight response does not use its scale. */
export function increase(dose: number, plateauGain: number, scale: number, shape: Shape): number {
  const gained = plateauGain * unitCurves[shape].rise(dosePerScale(dose, scale, shape));
  return finite(gained, dose, scale);
}

/** Strength at a dose. */
export function response(
  dose: number,
  base: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
): number {
  return base + increase(dose, plateauGain, scale, shape);
}

/** Strength gained by the next unit of dose, ∂S/∂x. */
export function slope(dose: number, plateauGain: number, scale: number, shape: Shape): number {
  const perScale = unitCurves[shape].slope(dosePerScale(dose, scale, shape));
  return finite((plateauGain * perScale) / scaleOf(scale, shape), dose, scale);
}

/** The gradient of S with respect to base, gain and scale, for the delta method. */
export function gradient(
  dose: number,
  plateauGain: number,
  scale: number,
  shape: Shape,
): [base: number, plateauGain: number, scale: number] {
  const { rise, turn } = unitCurves[shape];
  const t = dosePerScale(dose, scale, shape);
  const risen = rise(t);
  return [1, risen, shape === "straight" ? 0 : (plateauGain * turn(t, risen)) / scale];
}

/** What the dose is divided by: a straight response does not use its scale. */
export function scaleOf(scale: number, shape: Shape): number {
  return shape === "straight" ? 1 : scale;
}

/** t of a response: the dose as it stands where the curve is straight, else the dose over the scale. */
export function dosePerScale(dose: number, scale: number, shape: Shape): number {
  return dose / scaleOf(scale, shape);
}

function finite(value: number, dose: number, scale: number): number {
  if (Number.isFinite(value)) return value;
  return impossible(
    `The dose is ${dose} and the scale ${scale}. They lie too far apart to compute a response: give both in the same unit, and a scale above 0.`,
  );
}
