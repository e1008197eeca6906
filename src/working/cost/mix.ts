import { bindingLimits, type Mix } from "../../model/cost/mix/account";
import { cheapestMix } from "../../model/cost/mix/mix";
import type { Shape } from "../../model/strength/response";
import type { Vector } from "../../model/vectors";
import { product, sum } from "../expression";
import { amount, type Curves, pictured, sampled, short } from "../picture";
import { each, line, numbered, type Value, type Working } from "../step";
import { rise } from "../strength/shapes";

const PER_GAIN = "money/t per N·m/g";

export function mix(
  target: number,
  gains: Vector,
  scales: Vector,
  prices: Vector,
  maxima: Vector,
  shapes: readonly Shape[],
  sideUse: readonly Vector[],
  sideLimits: Vector | undefined,
): Working {
  const limits = sideLimits ?? [];
  const mixFor = (wanted: number) =>
    cheapestMix(wanted, gains, scales, prices, maxima, shapes, sideUse, limits);
  const found = mixFor(target);
  const { options, cost, nextGain, single } = found;
  const used = options.filter(({ amount: much }) => much > 0);
  return {
    says: `${amount(target, "N·m/g")} for ${amount(cost, "money/t")} at the least: ${used.length === 0 ? "no option is needed" : used.map(({ number, amount: much }) => `${short(much)} of option ${number}`).join(", ")}.`,
    steps: [
      each(
        "The cheapest amounts, found by following the cost down to where nothing can be shifted to advantage; what each gains",
        options.map((option, i) =>
          line(
            numbered("option", i),
            product(
              gains[i] as number,
              rise(option.amount, scales[i] as number, shapes[i] as Shape),
            ),
            "N·m/g",
          ),
        ),
      ),
      each(
        "What each costs",
        options.map((option, i) =>
          line(numbered("option", i), product(prices[i] as number, option.amount), "money/t"),
        ),
      ),
      each("Together", [
        line("gain", sum(...options.map(({ gain }) => gain)), "N·m/g"),
        line("cost", sum(...options.map((option) => option.cost)), "money/t"),
        ...found.limits.map(({ use }, j) =>
          line(`${numbered("side limit", j)}, of ${amount(limits[j] as number, "")}`, use, ""),
        ),
      ]),
      {
        kind: "table",
        what: "The mix",
        columns: [
          "option",
          "amount [kg/t, kWh/t]",
          "share of the gain [fraction]",
          "cost [money/t]",
          `marginal cost [${PER_GAIN}]`,
        ],
        rows: [
          ...options.map((option): readonly Value[] => [
            option.number,
            option.amount,
            option.shareOfGain,
            option.cost,
            option.marginalCost ?? "",
          ]),
          ["total", "", "", cost, nextGain ?? ""],
          ["limits that bind", bindingLimits(found), "", "", ""],
          [
            "saving against the cheapest single option [money/t]",
            single?.saving ?? "",
            single === undefined ? "no option does it alone" : `option ${single.option}`,
            "",
            "",
          ],
        ],
      },
    ],
    ...(target > 0 ? pictured(() => costOfGain(target, found, mixFor)) : {}),
    remarks: remarks(found),
  };
}

/** The cost of the cheapest mix, and of the cheapest single option, for every gain up to the target. */
function costOfGain(target: number, { cost }: Mix, mixFor: (wanted: number) => Mix): Curves {
  const mixes = sampled(0, target, (gain) => gain).map(([gain]) => ({ gain, mix: mixFor(gain) }));
  const alone = mixes.flatMap(({ gain, mix: { single } }) =>
    single === undefined ? [] : [[gain, single.cost] as const],
  );
  return {
    kind: "curves",
    title: "What a gain in strength costs",
    alt: `What a gain in strength costs: ${amount(cost, "money/t")} for ${amount(target, "N·m/g")} by the cheapest mix.`,
    x: { label: "gain", unit: "N·m/g" },
    y: { label: "cost", unit: "money/t" },
    curves: [
      {
        label: "cheapest mix",
        points: mixes.map(({ gain, mix: { cost } }) => [gain, cost] as const),
      },
      ...(alone.length > 1 ? [{ label: "cheapest single option", points: alone }] : []),
    ],
    here: [target, cost],
  };
}

function remarks({ nextGain, limits }: Mix): readonly string[] {
  return [
    ...(nextGain === undefined
      ? []
      : [`A further N·m/g would cost ${amount(nextGain, "money/t")}.`]),
    ...limits.flatMap(({ binds, worth }, j) =>
      binds && worth !== undefined
        ? [`Side limit ${j + 1} binds: a unit more of it would save ${amount(worth, "money/t")}.`]
        : [],
    ),
    "Gains are taken as additive. Treatments that compete for the same bonds gain less together: confirm the mix by a trial.",
  ];
}
