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
  /** The largest amount that can be of use, and what makes it so. */
  readonly full: number;
  readonly ceiling: Ceiling;
}

export type Ceiling = "maximum" | "peak" | "plateau";

export function optionOf(
  shape: Shape,
  plateauGain: number,
  scale: number,
  price: number,
  maximum: number,
  uses: readonly number[],
): Option {
  const useful = usefulScales(shape, uses) * scaleOf(scale, shape);
  const full = Math.min(maximum, useful);
  const ceiling = full === maximum ? "maximum" : shape === "peaked" ? "peak" : "plateau";
  return { shape, plateauGain, scale, price, uses, full, ceiling };
}

/** How many scales of an option are of use: past the plateau only for the relief that it may give. */
function usefulScales(shape: Shape, uses: readonly number[]): number {
  if (shape === "peaked") return 1;
  const givesRelief = uses.some((use) => use < 0);
  return shape === "exponential" && !givesRelief ? PLATEAU : Number.POSITIVE_INFINITY;
}

export function gainOf({ plateauGain, scale, shape }: Option, amount: number): number {
  return increase(amount, plateauGain, scale, shape);
}
