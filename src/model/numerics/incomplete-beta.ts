import { stirlingError } from "./log-gamma";

/**
 * The regularised incomplete beta function I_x(a, b): the tail of Student's t, of F and of the binomial.
 *
 * The continued fraction converges fast below x = (a+1)/(a+b+2); above it the symmetry
 * I_x(a, b) = 1 − I_{1−x}(b, a) is used. Its factor xᵃ·yᵇ/B(a, b) is built from deviations about the
 * mean a/(a+b), so that large a and b cost no digits.
 *
 * Source: NIST Digital Library of Mathematical Functions, 8.17.4 and 8.17.22; C. Loader, Fast and
 * accurate computation of binomial probabilities (2000), for the factor.
 */

const TINY = 1e-300;
const MOST_TERMS = 1_000_000;

/** a·ln(1 + excess/a), also where excess is near −a; `ratio` is 1 + excess/a without that cancellation. */
function scaledLog(a: number, excess: number, ratio: number): number {
  return a * (Math.abs(excess) < a / 2 ? Math.log1p(excess / a) : Math.log(ratio));
}

/** xᵃ·yᵇ/B(a, b) with y = 1 − x. */
function betaPower(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const excess = b * x - a * y;
  const exponent =
    scaledLog(a, excess, (x * n) / a) +
    scaledLog(b, -excess, (y * n) / b) +
    (stirlingError(n) - stirlingError(a) - stirlingError(b));
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(exponent);
}

/** 1 + d₁/(1 + d₂/(1 + …)) of 8.17.22, by the modified method of Lentz. */
function continuedFraction(x: number, a: number, b: number): number {
  let above = 1;
  let below = 0;
  let value = 1;
  for (let k = 1; k < MOST_TERMS; k++) {
    const m = k >> 1;
    const top = k % 2 === 0 ? m * (b - m) : -(a + m) * (a + b + m);
    const term = (top * x) / ((a + k - 1) * (a + k));
    below = 1 / (1 + term * below || TINY);
    above = 1 + term / above || TINY;
    value *= above * below;
    if (Math.abs(above * below - 1) < 3e-16) break;
  }
  return value;
}

/** I_x(a, b) for a, b > 0; `y` is 1 − x, given where the caller has it without cancellation. */
export function incompleteBeta(x: number, a: number, b: number, y = 1 - x): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(y, b, a, x);
  return betaPower(x, y, a, b) / (a * continuedFraction(x, a, b));
}
