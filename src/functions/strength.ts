import { choice } from "../cells/choice";
import { elementwise } from "../cells/elementwise";
import { fromData } from "../cells/from-data";
import {
  aboveZero,
  anyNumber,
  insideUnit,
  LARGEST_SEED,
  MOST_ROWS,
  notNegative,
  optionalQuantity,
  quantity,
  quantityOrNone,
  wholeNumber,
} from "../cells/quantity";
import { optionalLabels, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { Refusal } from "../model/refusal";
import { bandOf } from "../model/strength/band";
import { doseFor } from "../model/strength/dose-for";
import { type Estimate, estimates } from "../model/strength/limits";
import { fitMeasured, fittedShapes } from "../model/strength/measured";
import { response, shapes } from "../model/strength/response";
import { sampleCurves } from "../model/strength/sample";

const LIMITS_CONFIDENCE = 0.95;

/**
 * The shapes of a response curve.
 * @customenum {string}
 */
declare enum ResponseShape {
  /** Rises ever more slowly to a plateau */
  exponential = "exponential",
  /** Rises to a plateau that it reaches late */
  hyperbolic = "hyperbolic",
  /** Rises to a peak and falls again */
  peaked = "peaked",
  /** Rises in proportion to the dose */
  straight = "straight",
}

/**
 * The shapes of a response curve, or the one that suits the points best.
 * @customenum {string}
 */
declare enum FittedShape {
  /** Rises ever more slowly to a plateau */
  exponential = "exponential",
  /** Rises to a plateau that it reaches late */
  hyperbolic = "hyperbolic",
  /** Rises to a peak and falls again */
  peaked = "peaked",
  /** Rises in proportion to the dose */
  straight = "straight",
  /** The one of the four with the least corrected Akaike */
  best = "best",
}

const shape = choice("shape", shapes, "exponential");
const base = quantity("base", "N·m/g", anyNumber);
const plateauGain = quantity("plateauGain", "N·m/g", anyNumber);
const scale = quantity("scale", "kg/t", aboveZero);

const curve = elementwise(
  "STRENGTH.RESPONSE",
  [quantity("dose", "kg/t", notNegative), base, plateauGain, scale, shape],
  response,
);

/**
 * Strength at a dose on a response curve. Neutral to the unit: burst, compression or bond serve as well, and
 * a refining curve has kWh/t for its dose. What the curve reaches in the end is plateauGain; the increase at a
 * dose is less.
 * @customfunction STRENGTH.RESPONSE
 * @param dose Dose [kg/t]; 0 or more.
 * @param base Strength without additive [N·m/g].
 * @param plateauGain What the curve gains in the end, at the peak where it is peaked, per unit of dose where it is straight [N·m/g]; below 0 where it falls.
 * @param scale Dose that sets the pace: 63 % of the gain where exponential, half where hyperbolic, the peak where peaked; not used where straight [kg/t]; above 0.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight]; exponential if left out.
 * @returns Strength at the dose [N·m/g].
 * @equation S = S_0 + G \cdot \begin{cases} 1 - e^{-x/k} & \text{exponential} \\ \dfrac{x}{k + x} & \text{hyperbolic} \\ \dfrac{x}{k}\,e^{1 - x/k} & \text{peaked} \\ x & \text{straight} \end{cases}
 * @range Up to the highest dose that was tested.
 * @source Bates & Watts, Nonlinear Regression Analysis (1988), for the two saturating shapes; Ricker, J. Fish. Res. Board Can. 11 (1954) 559, for the peaked one.
 * @words dose response, strength curve, saturation, plateau, refining curve
 * @example =WETEND.STRENGTH.RESPONSE(6, 40, 10, 6) → 46.3212056
 * @example =WETEND.STRENGTH.RESPONSE({3,6,12}, 40, 10, 6, "peaked") → {48.2436064,50,47.3575888}
 * @requiresAddress
 */
export function strengthResponse(
  dose: any[][],
  base: any[][],
  plateauGain: any[][],
  scale: any[][],
  shape: ResponseShape,
  invocation: CustomFunctions.Invocation,
): any[][] {
  return curve(dose, base, plateauGain, scale, shape, invocation);
}

const paired = true;
const doses = vector("doses", "n", "kg/t", notNegative, { paired });
const strengths = vector("strengths", "n", "N·m/g", aboveZero, { paired });
const knownBase = quantityOrNone("knownBase", "N·m/g", notNegative);
const batches = optionalLabels("batches", "n", paired);
const blocks = optionalLabels("blocks", "n", paired);

const fitted = whole(
  "STRENGTH.FIT",
  [doses, strengths, choice("shape", fittedShapes, "exponential"), knownBase, batches, blocks],
  (...values) => {
    const fit = fitMeasured(...values);
    const { base, plateauGain, scale } = estimates(fit, LIMITS_CONFIDENCE);
    return [
      ["parameter", "estimate", "standard error", "lower", "upper"],
      estimateRow("base", base),
      estimateRow("gain", plateauGain),
      estimateRow("scale", scale),
      singleRow("residual standard deviation", fit.residualStandardDeviation),
      singleRow("R²", fit.rSquared ?? ""),
      singleRow("points", fit.points),
      singleRow("corrected Akaike", fit.correctedAkaike ?? NO_AKAIKE),
      singleRow("lack-of-fit p", fit.lackOfFit ?? ""),
      singleRow("shape", fit.shape),
    ];
  },
);

const NO_AKAIKE = new Refusal(
  "no answer",
  "Corrected Akaike needs 3 points more than parameters, and points off the curve. Add points.",
);

const estimateRow = (name: string, { estimate, standardError, lower, upper }: Estimate) => [
  name,
  estimate,
  standardError,
  lower,
  upper,
];

const singleRow = (name: string, value: number | string | Refusal) => [name, value, "", "", ""];

/**
 * Fits a response curve to measured points by least squares, without starting values. Neutral to the unit.
 * The points are batches: give `batches` wherever a batch made several sheets, which are then averaged. Where
 * gain and scale cannot be told apart the answer is #N/A and says what to add. Limits that hold 0 for the gain
 * mean that no effect is shown.
 * @customfunction STRENGTH.FIT
 * @param doses Dose of each measurement [kg/t]; 0 or more; a row or a column; the blank (0) among them.
 * @param strengths Strength of each measurement [N·m/g, or any one unit]; above 0.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight, best]; best picks by corrected Akaike, from 6 points on; exponential if left out.
 * @param [knownBase] Holds the base at this strength, 0 for the classic curves of two parameters [unit of strengths]; 0 or more; fitted if left out. A blank cell may arrive as 0: leave the argument out instead.
 * @param [batches] Batch that each measurement is from [number or name]; may be numbered anew at every dose; each is a batch of its own if left out.
 * @param [blocks] Block (day, make-up of stock) of each measurement [number or name]; each block gets a base of its own, and the table gives their mean; not with knownBase.
 * @returns Table: base, gain and scale, each with estimate, standard error and 95 % limits (a held one with error 0); residual standard deviation [unit of strengths; the scale in that of doses]; R²; points [count]; corrected Akaike (#N/A where points are not 3 more than parameters); lack-of-fit p (blank where no dose repeats) [fraction]; the shape.
 * @equation \min_{S_0, G, k} \sum_i \left(S_i - S(x_i)\right)^2, \quad \text{limits} = \hat\theta \pm t_{0.975,\,n - p}\,s_{\hat\theta}, \quad \text{AICc} = n \ln\frac{\text{RSS}}{n} + 2q + \frac{2q(q + 1)}{n - q - 1}, \; q = p + 1
 * @range Independent batches that vary alike at all doses; doses that show the curve: a blank, the rise, the plateau. Limits of a scale that is poorly known are rough.
 * @source Bates & Watts, Nonlinear Regression Analysis (1988); Golub & Pereyra, SIAM J. Numer. Anal. 10 (1973) 413; Hurvich & Tsai, Biometrika 76 (1989) 297; lack of fit: Draper & Smith, Applied Regression Analysis (1998). Meets NIST StRD Misra1a and Misra1d.
 * @words curve fitting, regression, least squares, calibrate, dose response, trial result
 * @example =WETEND.STRENGTH.FIT({0,2,4,6,8,12,16}, {40.3,44.1,46.2,47.9,48.4,49.6,49.8}) → {"parameter","estimate","standard error","lower","upper";"base",40.323425,0.154161,39.895407,40.751444;"gain",9.711584,0.195013,9.170141,10.253027;"scale",4.174232,0.21158,3.586793,4.761672;"residual standard deviation",0.161621,"","","";"R²",0.998513,"","","";"points",7,"","","";"corrected Akaike",-1.432321,"","","";"lack-of-fit p","","","","";"shape","exponential","","",""}
 * @requiresAddress
 */
export function strengthFit(
  doses: any[][],
  strengths: any[][],
  shape: FittedShape,
  knownBase: any[][],
  batches: any[][],
  blocks: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return fitted(doses, strengths, shape, knownBase, batches, blocks, invocation);
}

const band = fromData(
  "STRENGTH.BAND",
  quantity("dose", "kg/t", notNegative),
  [
    doses,
    strengths,
    shape,
    knownBase,
    optionalQuantity("confidence", "fraction", insideUnit, 0.95),
    batches,
    blocks,
  ],
  (doses, strengths, shape, knownBase, confidence, batches, blocks) => {
    const fit = fitMeasured(doses, strengths, shape, knownBase, batches, blocks);
    const at = bandOf(fit, confidence);
    return (dose) => {
      const { lower, estimate, upper } = at(dose);
      return [lower, estimate, upper];
    };
  },
);

/**
 * How sure a fitted curve is at a dose: limits of the mean, not of the next sheet. A column of doses gives the
 * band to draw beside the points.
 * @customfunction STRENGTH.BAND
 * @param dose Dose at which the curve is read [kg/t]; 0 or more; a column gives a row each.
 * @param doses Dose of each measurement [kg/t]; 0 or more; a row or a column.
 * @param strengths Strength of each measurement [N·m/g, or any one unit]; above 0.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight]; exponential if left out.
 * @param [knownBase] Holds the base at this strength [unit of strengths]; 0 or more; fitted if left out.
 * @param [confidence] Confidence of the limits, two-sided [fraction]; above 0, below 1; 0.95 if left out.
 * @param [batches] Batch that each measurement is from [number or name]; each is a batch of its own if left out.
 * @param [blocks] Block of each measurement [number or name]; the band is then that of the mean over the blocks.
 * @returns Lower limit, estimate and upper limit of the mean strength, in a row [unit of strengths].
 * @equation \hat S(x) \pm t_{\nu}\,\sqrt{g^{\mathsf T} C\, g}, \quad g = \frac{\partial S}{\partial (S_0, G, k)}
 * @range Between the lowest and the highest dose that was tested; range as STRENGTH.FIT.
 * @source Bates & Watts, Nonlinear Regression Analysis (1988): delta method, Student's t.
 * @words confidence band, confidence interval, how sure, error of the curve, uncertainty of a fit
 * @example =WETEND.STRENGTH.BAND({3;10}, {0,2,4,6,8,12,16}, {40.3,44.1,46.2,47.9,48.4,49.6,49.8}) → {45.03041,45.301701,45.572992;48.929177,49.150154,49.37113}
 * @requiresAddress
 */
export function strengthBand(
  dose: any[][],
  doses: any[][],
  strengths: any[][],
  shape: ResponseShape,
  knownBase: any[][],
  confidence: any[][],
  batches: any[][],
  blocks: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return band(dose, doses, strengths, shape, knownBase, confidence, batches, blocks, invocation);
}

const samples = whole(
  "STRENGTH.SAMPLE",
  [
    doses,
    strengths,
    wholeNumber("count", 1, MOST_ROWS),
    wholeNumber("seed", 0, LARGEST_SEED),
    shape,
    knownBase,
    batches,
    blocks,
  ],
  (doses, strengths, count, seed, ...how) =>
    sampleCurves(fitMeasured(doses, strengths, ...how), count, seed).map(
      ({ base, plateauGain, scale }) => [base, plateauGain, scale],
    ),
);

/**
 * Curves that the measurements allow: feed the columns to STRENGTH.RESPONSE for a column of strengths, or to
 * STRENGTH.DOSEFOR for a column of doses and its limits. Gain and scale go together, so that sampling them
 * apart would overstate the spread. The mean and the covariance are those of the fit; the scale is lognormal, so that it stays above 0, base and gain are normal about it.
 * @customfunction STRENGTH.SAMPLE
 * @param doses Dose of each measurement [kg/t]; 0 or more; a row or a column.
 * @param strengths Strength of each measurement [N·m/g, or any one unit]; above 0.
 * @param count Number of curves [count]; 1 to 100,000.
 * @param seed Any number that picks the sample [whole number]; 0 to 4294967295. The same seed gives the same sample on every machine.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight]; exponential if left out.
 * @param [knownBase] Holds the base at this strength [unit of strengths]; 0 or more; fitted if left out.
 * @param [batches] Batch that each measurement is from [number or name]; each is a batch of its own if left out.
 * @param [blocks] Block of each measurement [number or name]; the base is then the mean over the blocks.
 * @returns A row a curve: base, gain [unit of strengths], scale [unit of doses]; one that is held repeats.
 * @equation \begin{pmatrix} S_0 \\ G \\ k \end{pmatrix}_r = \hat\theta + F z_r, \quad F F^{\mathsf T} = C
 * @range With few degrees of freedom the limits of STRENGTH.FIT, which use Student's t, are wider than the spread of the sample.
 * @source Covariance of the fit: Bates & Watts, Nonlinear Regression Analysis (1988); stratified: McKay, Beckman, Conover, Technometrics 21 (1979) 239; random numbers: Salmon et al., SC '11 (2011).
 * @words Monte Carlo, random curves, correlated parameters, uncertainty of a fit
 * @example =WETEND.STRENGTH.SAMPLE({0,2,4,6,8,12,16}, {40.3,44.1,46.2,47.9,48.4,49.6,49.8}, 3, 7) → {40.321247,9.497126,3.89558;40.164513,9.885781,4.1782;40.430481,9.777062,4.405162}
 * @requiresAddress
 */
export function strengthSample(
  doses: any[][],
  strengths: any[][],
  count: any[][],
  seed: any[][],
  shape: ResponseShape,
  knownBase: any[][],
  batches: any[][],
  blocks: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return samples(doses, strengths, count, seed, shape, knownBase, batches, blocks, invocation);
}

const needed = elementwise(
  "STRENGTH.DOSEFOR",
  [
    quantity("target", "N·m/g", aboveZero),
    base,
    plateauGain,
    scale,
    shape,
    quantityOrNone("highestTried", "kg/t", notNegative),
  ],
  doseFor,
);

/**
 * Dose at which a response curve reaches a target strength. A peaked curve passes it twice: the lower dose is
 * given. Give highestTried, so that nothing is read beyond what was tested.
 * @customfunction STRENGTH.DOSEFOR
 * @param target Strength wanted [N·m/g]; above 0.
 * @param base Strength without additive [N·m/g].
 * @param plateauGain What the curve gains in the end, at the peak where it is peaked, per unit of dose where it is straight [N·m/g]; below 0 where it falls.
 * @param scale Dose that sets the pace, as in STRENGTH.RESPONSE; not used where straight [kg/t]; above 0.
 * @param [shape] Shape of the curve [one of: exponential, hyperbolic, peaked, straight]; exponential if left out.
 * @param [highestTried] Highest dose that was tested [kg/t]; 0 or more; no limit if left out.
 * @returns Dose [kg/t]; #N/A where the curve does not reach the target, or beyond highestTried.
 * @equation f = \frac{T - S_0}{G}: \quad x = \begin{cases} -k \ln(1 - f) & \text{exponential} \\ k\,\dfrac{f}{1 - f} & \text{hyperbolic} \\ -k\,W_0(-f/e) & \text{peaked} \\ f & \text{straight} \end{cases}
 * @range Up to the highest dose that was tested.
 * @source The inverse of STRENGTH.RESPONSE.
 * @words required dose, target strength, inverse, how much starch
 * @example =WETEND.STRENGTH.DOSEFOR(45, 40, 10, 6) → 4.15888308
 * @example =WETEND.STRENGTH.DOSEFOR(49, 40, 10, 6, "exponential", 12) → #N/A
 * @requiresAddress
 */
export function strengthDoseFor(
  target: any[][],
  base: any[][],
  plateauGain: any[][],
  scale: any[][],
  shape: ResponseShape,
  highestTried: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return needed(target, base, plateauGain, scale, shape, highestTried, invocation);
}
