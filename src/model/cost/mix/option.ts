import { increase, type Shape, scaleOf } from "../../strength/response";

/** Scales from which on an exponential response is at its plateau to the last digit of a double. */
const PLATEAU = 40;

export interface Option {
  readonly shape: Shape;
  readonly plateauGain: number;
  readonly scale: number;
  readonly price: number;
  /** Use of each limit by a unit of the option; below 0 it gives relief. */
  readonly uses: readonly number[];
  /** The largest amount that can be of use. */
  readonly full: number;
}

export function optionOf(
  shape: Shape,
  plateauGain: number,
  scale: number,
  price: number,
  maximum: number,
  uses: readonly number[],
): Option {
  const givesRelief = uses.some((use) => use < 0);
  const full = Math.min(maximum, usefulScales(shape, givesRelief) * scaleOf(scale, shape));
  return { shape, plateauGain, scale, price, uses, full };
}

function usefulScales(shape: Shape, givesRelief: boolean): number {
  if (shape === "peaked") return 1;
  return shape === "exponential" && !givesRelief ? PLATEAU : Number.POSITIVE_INFINITY;
}

export function gainOf({ plateauGain, scale, shape }: Option, amount: number): number {
  return increase(amount, plateauGain, scale, shape);
}
