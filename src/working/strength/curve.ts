import { response, type Shape, unitCurves } from "../../model/strength/response";
import { type Axis, type Curves, type Point, sampled } from "../picture";

/** A response curve by its parameters. */
export interface Response {
  readonly base: number;
  readonly plateauGain: number;
  readonly scale: number;
  readonly shape: Shape;
}

export const DOSE: Axis = { label: "dose", unit: "kg/t" };
export const STRENGTH: Axis = { label: "strength", unit: "N·m/g", fromZero: false };

export const strengthAt = ({ base, plateauGain, scale, shape }: Response, dose: number) =>
  response(dose, base, plateauGain, scale, shape);

export const curveUpTo = (curve: Response, highest: number): readonly Point[] =>
  sampled(0, highest, (dose) => strengthAt(curve, dose));

/** How far a curve is drawn that is read at a dose: beyond it, and as far as its form shows. */
export function reachOf({ scale, shape }: Response, dose: number): number {
  if (shape === "straight") return dose > 0 ? dose : 1;
  return dose > 3 * scale ? dose : Math.max(2 * dose, 3 * scale);
}

/** How much of its gain a curve has shown by a dose; 1 where there is no end to reach. */
export function shownBy({ scale, shape }: Response, highest: number): number {
  if (shape === "straight") return 1;
  const t = highest / scale;
  return shape === "peaked" && t >= 1 ? 1 : unitCurves[shape].rise(t);
}

/** The line that a curve does not pass, where the picture reaches far enough to show it. */
export function limitLine(curve: Response, highest: number): Pick<Curves, "level"> {
  const { base, plateauGain, shape } = curve;
  if (shape === "straight" || shownBy(curve, highest) < 0.5) return {};
  const label = shape === "peaked" ? "peak" : "plateau";
  return { level: { label, y: base + plateauGain } };
}
