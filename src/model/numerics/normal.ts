/**
 * The normal distribution, to full double accuracy in both tails.
 *
 * The cdf uses Cody's rational approximations on three ranges; an upper tail is `normalCdf(-x)`, never
 * `1 - normalCdf(x)`. exp(−x²/2) is taken in two factors, since the rounding of x² would otherwise cost
 * x²/2 units in the last place. The quantile starts from Hastings' approximation and takes two steps of
 * Halley's method.
 *
 * Source: W. J. Cody, Rational Chebyshev approximations for the error function, Math. Comp. 23 (1969)
 * 631–637; C. Hastings, as 26.2.23 in Abramowitz & Stegun (1964).
 */

const CENTRE = 0.67448975;
const MIDDLE = Math.sqrt(32);
const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

// Coefficients run from the highest power down to the constant.
const CENTRE_TOP = [
  0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.6894854603709,
  18154.98125334356,
];
const CENTRE_BOTTOM = [
  1, 47.202581904688245, 976.0985517377767, 10260.932208618979, 45507.78933502673,
];
const MIDDLE_TOP = [
  1.0765576773720192e-8, 0.39894151208813466, 8.883149794388377, 93.50665613217785,
  597.2702763948002, 2494.5375852903726, 6848.190450536283, 11602.65143764735, 9842.714838383978,
];
const MIDDLE_BOTTOM = [
  1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761,
  18615.571640885097, 34900.95272114598, 38912.00328609327, 19685.429676859992,
];
const FAR_TOP = [
  0.023073441764940174, 0.215898534057957, 0.12740116116024736, 0.022235277870649807,
  0.0014216191932278934, 2.9112874951168793e-5,
];
const FAR_BOTTOM = [
  1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824,
  7.297515550839662e-5,
];

function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = 0; i < coefficients.length; i++) value = value * x + (coefficients[i] as number);
  return value;
}

/** exp(−x²/2), exact to the last place. */
function bell(x: number): number {
  const rounded = Math.trunc(x * 16) / 16;
  return Math.exp(-rounded * rounded * 0.5) * Math.exp((rounded - x) * (rounded + x) * 0.5);
}

/** φ(x) = exp(−x²/2)/√(2π). */
export function normalDensity(x: number): number {
  return bell(x) / ROOT_TWO_PI;
}

/** Φ(x) − ½ for small x, where the difference would lose digits. */
function fromCentre(x: number): number {
  const square = x * x;
  return (x * polynomial(CENTRE_TOP, square)) / polynomial(CENTRE_BOTTOM, square);
}

/** Φ(x), the probability that a standard normal deviate is below x. */
export function normalCdf(x: number): number {
  const size = Math.abs(x);
  if (size <= CENTRE) return 0.5 + fromCentre(x);
  let tail = 0;
  if (size <= MIDDLE) {
    tail = (bell(size) * polynomial(MIDDLE_TOP, size)) / polynomial(MIDDLE_BOTTOM, size);
  } else if (size < 39) {
    const inverse = 1 / (size * size);
    const correction = (inverse * polynomial(FAR_TOP, inverse)) / polynomial(FAR_BOTTOM, inverse);
    tail = (bell(size) * (1 / ROOT_TWO_PI - correction)) / size;
  }
  return x < 0 ? tail : 1 - tail;
}

/** x with Φ(x) = p, for p in (0, 1). For an upper tail q take `-normalQuantile(q)`. */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let x =
    (2.515517 + t * (0.802853 + t * 0.010328)) /
      (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) -
    t;
  for (let step = 0; step < 2; step++) {
    const excess = p > 0.3 ? fromCentre(x) - (p - 0.5) : normalCdf(x) - p;
    const error = excess / normalDensity(x);
    x -= error / (1 + (x * error) / 2);
  }
  return x;
}
