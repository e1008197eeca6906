import { incompleteBeta } from "./incomplete-beta";
import { stirlingError } from "./log-gamma";
import { normalCdf, normalDensity, normalQuantile } from "./normal";

/**
 * Student's t with any positive, or infinite, degrees of freedom; both tails are accurate far out.
 *
 * Tail and centre come from the incomplete beta function: P(T > t) = ½·I_{ν/(ν+t²)}(ν/2, ½). The
 * quantile (up to 1e150 in size) is Newton's method on the logarithm of the probability against ln t. Both
 * curves (tail below a quarter, centre above) are concave there, so that the steps converge from any start.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.17; Abramowitz & Stegun (1964) 26.7.1, 26.5.27.
 */

/** Probability density at t. */
export function studentDensity(t: number, degrees: number): number {
  if (degrees === Number.POSITIVE_INFINITY) return normalDensity(t);
  const correction = stirlingError((degrees + 1) / 2) - stirlingError(degrees / 2) - 0.5;
  const shrink = (degrees / 2) * Math.log1p(1 / degrees);
  const power = ((degrees + 1) / 2) * Math.log1p(t * (t / degrees));
  return Math.exp(correction + shrink - power) / Math.sqrt(2 * Math.PI);
}

/** P(T > t); the lower tail is `studentTail(-t, degrees)`. */
export function studentTail(t: number, degrees: number): number {
  if (degrees === Number.POSITIVE_INFINITY) return normalCdf(-t);
  if (t < 0) return 1 - studentTail(-t, degrees);
  const [outer, inner] = shares(t, degrees);
  return incompleteBeta(outer, degrees / 2, 0.5, inner) / 2;
}

/** P(T ≤ t). */
export function studentCdf(t: number, degrees: number): number {
  return studentTail(-t, degrees);
}

/** t with P(T ≤ t) = p, for p in (0, 1). For an upper tail q take `-studentQuantile(q, degrees)`. */
export function studentQuantile(p: number, degrees: number): number {
  if (degrees === Number.POSITIVE_INFINITY) return normalQuantile(p);
  if (p === 0.5) return 0;
  if (p > 0.5) return -studentQuantile(1 - p, degrees);
  const central = p > 0.25;
  const wanted = Math.log(central ? 0.5 - p : p);
  let t = central ? (0.5 - p) * Math.sqrt(2 * Math.PI) : -normalQuantile(p);
  for (let step = 0; step < 200; step++) {
    const reached = central ? betweenZeroAnd(t, degrees) : studentTail(t, degrees);
    const slope = (studentDensity(t, degrees) * t) / reached;
    const change = (central ? wanted - Math.log(reached) : Math.log(reached) - wanted) / slope;
    t *= Math.exp(change);
    if (Math.abs(change) < 1e-15 || !Number.isFinite(t)) break;
  }
  return -t;
}

/** P(0 < T < t), without the cancellation of ½ − tail. */
function betweenZeroAnd(t: number, degrees: number): number {
  const [outer, inner] = shares(t, degrees);
  return incompleteBeta(inner, 0.5, degrees / 2, outer) / 2;
}

/** ν/(ν+t²) and t²/(ν+t²), safe from overflow. */
function shares(t: number, degrees: number): [number, number] {
  const ratio = (t / degrees) * t;
  return ratio > 1
    ? [1 / ratio / (1 + 1 / ratio), 1 / (1 + 1 / ratio)]
    : [1 / (1 + ratio), ratio / (1 + ratio)];
}
