import { doseFor } from "../../strength/dose-for";
import { slope } from "../../strength/response";
import { type Ceiling, gainOf, type Option } from "./option";

/** Part of the target below which an option is not used. */
const NEGLIGIBLE = 1e-10;
/** A limit binds if it is reached to this, relative to itself. */
const REACHED = 1e-7;
/** What rounding leaves between two costs that are the same, relative to them. */
const ROUNDING = 1e-12;

export interface MixOption {
  /** Options are counted from 1, in the order given. */
  readonly number: number;
  readonly amount: number;
  readonly gain: number;
  readonly shareOfGain: number;
  readonly cost: number;
  /** Price of the next N·m/g from this option; undefined where it gives no more, at its peak or plateau. */
  readonly marginalCost: number | undefined;
  /** What it is used up to, where it is used up to something. */
  readonly ceiling: Ceiling | undefined;
}

export interface MixLimit {
  readonly use: number;
  readonly binds: boolean;
  /** By how much the cost falls per unit by which the limit is raised; undefined with `nextGain`. */
  readonly worth: number | undefined;
}

export interface Mix {
  readonly options: readonly MixOption[];
  readonly cost: number;
  /** What the next N·m/g on top of the target costs; undefined where there is no target, or no more gain. */
  readonly nextGain: number | undefined;
  readonly limits: readonly MixLimit[];
  /** The cheapest option that meets the target and all limits alone, if one does. */
  readonly single:
    | { readonly option: number; readonly cost: number; readonly saving: number }
    | undefined;
}

/** The uses found, as parts of the full amounts, and what relief of target and limits is worth. */
export interface Solution {
  readonly used: ArrayLike<number>;
  readonly nextGain: number | undefined;
  readonly worths: readonly (number | undefined)[];
}

/** The account of a mix: what each option and each limit has to do with it, and what it saves. */
export function accountFor(
  target: number,
  options: readonly Option[],
  limits: readonly number[],
  { used, nextGain, worths }: Solution,
): Mix {
  const amounts = options.map((option, i) => {
    const part = used[i] as number;
    if (part >= 1 - REACHED / 100) return option.full;
    const amount = part * option.full;
    return gainOf(option, amount) < NEGLIGIBLE * target ? 0 : amount;
  });
  const gains = options.map((option, i) => gainOf(option, amounts[i] as number));
  const whole = gains.reduce((sum, gain) => sum + gain, 0);
  const cost = options.reduce((sum, { price }, i) => sum + price * (amounts[i] as number), 0);
  const single = cheapestSingle(target, options, limits);
  return {
    options: options.map((option, i): MixOption => {
      const amount = amounts[i] as number;
      const gain = gains[i] as number;
      const isFull = amount > 0 && amount >= option.full * (1 - REACHED);
      const ceiling = isFull ? option.ceiling : undefined;
      const rise =
        ceiling === "plateau" ? 0 : slope(amount, option.plateauGain, option.scale, option.shape);
      return {
        number: i + 1,
        amount,
        gain,
        shareOfGain: whole > 0 ? gain / whole : 0,
        cost: option.price * amount,
        marginalCost: rise > 0 ? option.price / rise : undefined,
        ceiling,
      };
    }),
    cost,
    nextGain,
    limits: limits.map((limit, j) => {
      const use = options.reduce(
        (sum, { uses }, i) => sum + (uses[j] as number) * (amounts[i] as number),
        0,
      );
      return { use, binds: use >= limit * (1 - REACHED), worth: worths[j] };
    }),
    single: single && { ...single, saving: savingAgainst(single.cost, cost) },
  };
}

/** The mix costs no more than the single option, but for the rounding of both. */
function savingAgainst(single: number, mix: number): number {
  const saving = single - mix;
  return saving > ROUNDING * single ? saving : 0;
}

function cheapestSingle(
  target: number,
  options: readonly Option[],
  limits: readonly number[],
): { option: number; cost: number } | undefined {
  let best: { option: number; cost: number } | undefined;
  for (const [i, option] of options.entries()) {
    const most = gainOf(option, option.full);
    if (most < target) continue;
    const { plateauGain, scale, shape } = option;
    const amount = most === target ? option.full : doseFor(target, 0, plateauGain, scale, shape);
    const keeps = limits.every(
      (limit, j) => (option.uses[j] as number) * amount <= limit * (1 + REACHED),
    );
    const cost = option.price * amount;
    if (keeps && (best === undefined || cost < best.cost)) best = { option: i + 1, cost };
  }
  return best;
}

/** The limits that bind, in words; none where the target alone decides. */
export function bindingLimits({ options, limits }: Mix): string {
  const words = [
    ...options.flatMap(({ ceiling }, i) => (ceiling ? [`${ceiling} of option ${i + 1}`] : [])),
    ...limits.flatMap(({ binds }, j) => (binds ? [`side limit ${j + 1}`] : [])),
  ];
  return words.length > 0 ? words.join(", ") : "none";
}
