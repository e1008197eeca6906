/**
 * The root of a continuous function between two points where its signs differ, by default to the last
 * digits of a double. Inverse quadratic interpolation where the last three points say that it is safe,
 * bisection otherwise; the bracket is never left.
 *
 * Source: Chandrupatla, Advances in Engineering Software 28(3) 1997, 145–149.
 */
export function root(
  f: (x: number) => number,
  low: number,
  high: number,
  relativeTolerance = Number.EPSILON,
): number {
  let [a, b] = [high, low];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa < 0 === fb < 0) throw new RangeError(`No change of sign between ${low} and ${high}`);

  let fraction = 0.5;
  for (;;) {
    const x = a + fraction * (b - a);
    const fx = f(x);
    let [c, fc] = [a, fa];
    if (fx < 0 !== fa < 0) {
      [c, fc] = [b, fb];
      [b, fb] = [a, fa];
    }
    [a, fa] = [x, fx];

    const best = Math.abs(fb) < Math.abs(fa) ? b : a;
    // The smallest number keeps a root at 0 from being halved for ever.
    const width = 2 * (relativeTolerance * Math.abs(best) + Number.MIN_VALUE);
    const least = width / Math.abs(b - a);
    if (fa === 0 || least > 0.5) return best;

    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    fraction =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) +
          ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5;
    fraction = Math.min(1 - least, Math.max(least, fraction));
  }
}
