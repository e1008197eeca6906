/**
 * The logarithm of the gamma function for positive arguments, and what Stirling's formula leaves out.
 *
 * From 10 on the asymptotic series gives every digit of a double; below, the recurrence
 * Γ(x+1) = x·Γ(x) climbs to it.
 *
 * Source: NIST Digital Library of Mathematical Functions, 5.5.1 and 5.11.1.
 */

const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;

/** δ(x) = ln Γ(x) − [(x − ½)·ln x − x + ½·ln 2π], free of the cancellation between large logarithms. */
export function stirlingError(x: number): number {
  let climbed = 0;
  let z = x;
  for (; z < 10; z++) climbed += (z + 0.5) * Math.log1p(1 / z) - 1;
  const w = 1 / (z * z);
  const series =
    1 / 12 -
    w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w * (1 / 1188 - w * (691 / 360360 - w / 156)))));
  return climbed + series / z;
}

/** ln Γ(x) for x > 0. */
export function logGamma(x: number): number {
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingError(x);
}
