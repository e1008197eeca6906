import { counted, figure } from "../../figure";
import { impossible, noAnswer } from "../../refusal";
import { type Shape, scaleOf, unitCurves } from "../../strength/response";
import { requireEqualLengths, type Vector } from "../../vectors";
import { accountFor, type Mix, type Solution } from "./account";
import { largestGain, leastCost } from "./least-cost";
import { gainOf, type Option, optionOf } from "./option";
import type { Program } from "./program";

/** How far above what can be reached a target may be by its own rounding. */
const TARGET_ROUNDING = 1e-9;
/** Ratios of one input to another that no mix can have. */
const BEYOND_REASON = 1e30;

/**
 * The cheapest mix of options that reaches a gain in strength: amounts xᵢ with
 *
 *   min Σ pᵢ·xᵢ,   Σ gainᵢ(xᵢ) ≥ target,   0 ≤ xᵢ ≤ maximumᵢ,   Σ sideᵢⱼ·xᵢ ≤ limitⱼ
 *
 * `sideUse` holds an array per limit with an entry per option; below 0 an option gives relief.
 *
 * Each response is concave and rising on the part that is used: exponential, hyperbolic and straight
 * everywhere, peaked up to its peak at one scale, where its slope is 0; it is concave up to two scales.
 * More of a peaked option than that gains less for more money and is not used. So the optimum is the
 * global one; it is found to 1e-9 of its cost or better by an interior-point method (see ./least-cost).
 *
 * Limits: gains are taken as additive. Options with equal worth may share in any proportion; an even
 * one is given.
 */
export function cheapestMix(
  target: number,
  plateauGains: Vector,
  scales: Vector,
  prices: Vector,
  maxima: Vector,
  shapes: readonly Shape[],
  sideUse: readonly Vector[],
  sideLimits: Vector,
): Mix {
  requireEqualLengths({ plateauGains, scales, prices, maxima });
  const uses = usesOfLimits(sideUse, shapes.length, sideLimits.length);
  const limits = Array.from(sideLimits);
  const options = withoutForbidden(
    shapes.map((shape, i) =>
      optionOf(
        shape,
        plateauGains[i] as number,
        scales[i] as number,
        prices[i] as number,
        maxima[i] as number,
        uses.map((use) => use[i] as number),
      ),
    ),
    limits,
  );
  return accountFor(target, options, limits, cheapestUse(target, options, limits));
}

function cheapestUse(
  target: number,
  options: readonly Option[],
  limits: readonly number[],
): Solution {
  if (target === 0) {
    return {
      used: options.map(() => 0),
      nextGain: undefined,
      worths: limits.map(() => undefined),
    };
  }
  const rows = limits.flatMap((limit, j) => limitRow(options, limit, j));
  const all = options.reduce((sum, option) => sum + gainOf(option, option.full), 0);
  const mayReach = all >= target * (1 - TARGET_ROUNDING);
  const answer = mayReach
    ? leastCost(programFor(target, options, rows), roughCost(target, options))
    : undefined;
  if (answer === undefined) return allThereIs(target, all, options, rows, limits);
  const worths = limits.map(() => 0);
  for (const [k, { j, unit }] of rows.entries())
    worths[j] = (answer.multipliers[k] as number) / unit;
  return {
    used: answer.used,
    nextGain: (answer.multipliers[rows.length] as number) / target,
    worths,
  };
}

/**
 * The mix of most gain, where that is the target to the last digit and so there is no choice; else the
 * refusal of a target that is out of reach.
 */
function allThereIs(
  target: number,
  all: number,
  options: readonly Option[],
  rows: readonly LimitRow[],
  limits: readonly number[],
): Solution {
  const largest =
    rows.length > 0 && all > 0
      ? largestGain(programFor(all, options, rows))
      : { used: options.map(() => 1), part: 1 };
  const reached = (largest?.part ?? 1) * all;
  if (largest === undefined || Math.abs(reached / target - 1) > TARGET_ROUNDING) {
    refuse(target, reached);
  }
  return { used: largest.used, nextGain: undefined, worths: limits.map(() => undefined) };
}

/** An array of uses for each limit. The uses of a single option are as well a single row of them. */
function usesOfLimits(
  sideUse: readonly Vector[],
  options: number,
  limits: number,
): readonly Vector[] {
  const only = sideUse[0];
  if (options === 1 && sideUse.length === 1 && only?.length === limits) {
    return Array.from(only, (use) => [use]);
  }
  if (sideUse.length !== limits) {
    impossible(
      `sideUse has ${counted(sideUse.length, "column")} and sideLimits has ${counted(limits, "value")}. Give a column of uses for each limit, or neither.`,
    );
  }
  for (const use of sideUse) {
    if (use.length !== options) {
      impossible(
        `sideUse has ${counted(use.length, "row")} for ${counted(options, "option")}. Give a row of uses for each option.`,
      );
    }
  }
  return sideUse;
}

/** The mix in parts: of full amounts, of limits, and of `gain` N·m/g. */
function programFor(gain: number, options: readonly Option[], rows: readonly LimitRow[]): Program {
  const program = {
    cost: options.map(({ price, full }) => price * full),
    gain: options.map(({ plateauGain }) => plateauGain / gain),
    stretch: options.map(({ full, scale, shape }) => full / scaleOf(scale, shape)),
    curve: options.map(({ shape }) => unitCurves[shape]),
    use: rows.map(({ use }) => use),
    limit: rows.map(({ limit }) => limit),
  };
  const numbers = [...program.cost, ...program.gain, ...program.stretch, ...program.use.flat()];
  if (!numbers.every((number) => Math.abs(number) < BEYOND_REASON)) {
    impossible(
      "Target, gains, scales, prices, maxima and uses lie too far apart to compute a mix. Give each in its unit.",
    );
  }
  return program;
}

/** Takes out options that use what none is allowed of and no other gives relief for. */
function withoutForbidden(options: readonly Option[], limits: readonly number[]): Option[] {
  const strict = limits.map(
    (limit, j) => limit === 0 && options.every(({ uses }) => (uses[j] as number) >= 0),
  );
  return options.map((option) =>
    option.uses.some((use, j) => strict[j] && use > 0) ? { ...option, full: 0 } : option,
  );
}

interface LimitRow {
  readonly j: number;
  readonly unit: number;
  readonly use: number[];
  readonly limit: number;
}

/** A limit in units of itself, or none where even full use of all options keeps it. */
function limitRow(options: readonly Option[], limit: number, j: number): LimitRow[] {
  const uses = options.map((option) => (option.uses[j] as number) * option.full);
  const most = uses.reduce((sum, use) => sum + Math.max(use, 0), 0);
  if (most <= limit) return [];
  const unit = limit > 0 ? limit : most;
  return [{ j, unit, use: uses.map((use) => use / unit), limit: limit / unit }];
}

/** Roughly what the target costs: options in the order of their cost per gain, each up to its scale. */
function roughCost(target: number, options: readonly Option[]): number {
  const offers = options.flatMap((option) => {
    const amount = option.shape === "straight" ? option.full : Math.min(option.full, option.scale);
    const gain = gainOf(option, amount);
    return gain > 0 ? [{ gain, perGain: (option.price * amount) / gain }] : [];
  });
  offers.sort((a, b) => a.perGain - b.perGain);
  let gained = 0;
  for (const { gain, perGain } of offers) {
    gained += gain;
    if (gained >= target) return perGain * target || 1;
  }
  return (offers.at(-1)?.perGain ?? 0) * target || 1;
}

function refuse(target: number, largest: number): never {
  if (largest < target * (1 - TARGET_ROUNDING)) {
    noAnswer(
      `A gain of ${figure(target)} N·m/g is out of reach: within their maxima and limits the options reach ${roundedDown(largest)} N·m/g. Lower the target, raise a maximum or a limit, or add an option.`,
    );
  }
  return noAnswer(
    `A gain of ${figure(target)} N·m/g is so close to the largest that the options reach that no cheapest mix can be told. Lower the target by a thousandth.`,
  );
}

/** Four figures, never above the value: what is said to be reached can be reached. */
function roundedDown(value: number): string {
  if (!(value > 0)) return "0";
  const step = 10 ** (Math.floor(Math.log10(value)) - 3);
  return figure(Math.floor(value / step) * step);
}
