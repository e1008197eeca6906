/**
 * Native functions of numbers that the grid's engine computes wrongly: of t and F nine digits are left,
 * of the far normal tail none, of GAMMA eight, EDATE runs over the end of a short month, and a leap year is
 * longer than a year to YEARFRAC. Those of dates are in date-numbers.
 */
import { fisherTail } from "../../model/numerics/fisher-f";
import { logGamma } from "../../model/numerics/log-gamma";
import { normalCdf, normalDensity, normalQuantile } from "../../model/numerics/normal";
import {
  studentCdf,
  studentDensity,
  studentQuantile,
  studentTail,
} from "../../model/numerics/student-t";
import { sameDayMonthsOn, yearFraction } from "./date-numbers";

/** A function of numbers; undefined for numbers outside its domain, which show as #NUM!. */
export interface NumericNative {
  /** How many it takes; two numbers: the fewest and the most. */
  readonly arguments: number | readonly [number, number];
  readonly compute: (...numbers: number[]) => number | undefined;
  /** How the grid shows the answer in a cell without a format of its own. */
  readonly format?: string;
}

const whole = Math.floor;
const probability = (p: number) => p > 0 && p < 1;

function normal(x: number, mean: number, deviation: number, cumulative: number) {
  if (deviation <= 0) return undefined;
  const standard = (x - mean) / deviation;
  return cumulative ? normalCdf(standard) : normalDensity(standard) / deviation;
}

const normalInverse = (p: number, mean: number, deviation: number) =>
  probability(p) && deviation > 0 ? mean + deviation * normalQuantile(p) : undefined;

const upperT = (t: number, degrees: number) =>
  degrees >= 1 ? studentTail(t, whole(degrees)) : undefined;

const bothT = (t: number, degrees: number) =>
  t >= 0 && degrees >= 1 ? 2 * studentTail(t, whole(degrees)) : undefined;

const bothTInverse = (p: number, degrees: number) =>
  p > 0 && p <= 1 && degrees >= 1 ? -studentQuantile(p / 2, whole(degrees)) : undefined;

const confidenceT = (alpha: number, deviation: number, size: number) =>
  probability(alpha) && deviation > 0 && size >= 2
    ? (-studentQuantile(alpha / 2, whole(size) - 1) * deviation) / Math.sqrt(whole(size))
    : undefined;

const soundF = (f: number, upper: number, lower: number) => f >= 0 && upper >= 1 && lower >= 1;

const upperF = (f: number, upper: number, lower: number) =>
  soundF(f, upper, lower) ? fisherTail(f, whole(upper), whole(lower)) : undefined;

function distributionF(f: number, upper: number, lower: number, cumulative: number) {
  if (!soundF(f, upper, lower)) return undefined;
  const [a, b] = [whole(upper) / 2, whole(lower) / 2];
  // P(F < f) is the upper tail of 1/F.
  if (cumulative) return f === 0 ? 0 : fisherTail(1 / f, 2 * b, 2 * a);
  const ratio = (a * f) / b;
  const beta = logGamma(a) + logGamma(b) - logGamma(a + b);
  return Math.exp(a * Math.log(ratio) - (a + b) * Math.log1p(ratio) - beta) / f;
}

/** f with P(F > f) = p, by halving of the interval until no number is left between its ends. */
function upperFInverse(p: number, upper: number, lower: number): number | undefined {
  if (!probability(p) || !soundF(1, upper, lower)) return undefined;
  let [low, high] = [0, 1];
  while ((upperF(high, upper, lower) as number) > p) [low, high] = [high, high * 2];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if ((upperF(middle, upper, lower) as number) > p) low = middle;
    else high = middle;
  }
}

/** Γ(x); by reflection left of 1/2. */
function gamma(x: number): number | undefined {
  if (x <= 0 && Number.isInteger(x)) return undefined;
  if (x < 0.5) return Math.PI / (Math.sin(Math.PI * x) * (gamma(1 - x) as number));
  if (Number.isInteger(x) && x <= 171) {
    let product = 1;
    for (let factor = 2; factor < x; factor++) product *= factor;
    return product;
  }
  return Math.exp(logGamma(x));
}

const normalDistribution: NumericNative = { arguments: 4, compute: normal };
const standardCumulative: NumericNative = { arguments: 1, compute: normalCdf };
const inverseNormal: NumericNative = { arguments: 3, compute: normalInverse };
const inverseStandard: NumericNative = { arguments: 1, compute: (p) => normalInverse(p, 0, 1) };
const inverseBothT: NumericNative = { arguments: 2, compute: bothTInverse };
const inverseF: NumericNative = { arguments: 3, compute: upperFInverse };
const rightF: NumericNative = { arguments: 3, compute: upperF };

export const numericNatives: Readonly<Record<string, NumericNative>> = {
  "NORM.DIST": normalDistribution,
  NORMDIST: normalDistribution,
  "NORM.S.DIST": { arguments: 2, compute: (z, cumulative) => normal(z, 0, 1, cumulative) },
  NORMSDIST: standardCumulative,
  "NORM.INV": inverseNormal,
  NORMINV: inverseNormal,
  "NORM.S.INV": inverseStandard,
  NORMSINV: inverseStandard,
  "T.DIST": {
    arguments: 3,
    compute: (t, degrees, cumulative) => {
      if (degrees < 1) return undefined;
      return (cumulative ? studentCdf : studentDensity)(t, whole(degrees));
    },
  },
  "T.DIST.RT": { arguments: 2, compute: upperT },
  "T.DIST.2T": { arguments: 2, compute: bothT },
  TDIST: {
    arguments: 3,
    compute: (t, degrees, tails) => {
      if (t < 0) return undefined;
      if (whole(tails) === 1) return upperT(t, degrees);
      return whole(tails) === 2 ? bothT(t, degrees) : undefined;
    },
  },
  "T.INV": {
    arguments: 2,
    compute: (p, degrees) =>
      probability(p) && degrees >= 1 ? studentQuantile(p, whole(degrees)) : undefined,
  },
  "T.INV.2T": inverseBothT,
  TINV: inverseBothT,
  "F.DIST.RT": rightF,
  FDIST: rightF,
  "F.DIST": { arguments: 4, compute: distributionF },
  "F.INV.RT": inverseF,
  FINV: inverseF,
  "F.INV": { arguments: 3, compute: (p, upper, lower) => upperFInverse(1 - p, upper, lower) },
  GAMMA: { arguments: 1, compute: gamma },
  "CONFIDENCE.T": { arguments: 3, compute: confidenceT },
  YEARFRAC: { arguments: [2, 3], compute: yearFraction },
  EDATE: { arguments: 2, compute: sameDayMonthsOn, format: "yyyy/mm/dd;@" },
};
