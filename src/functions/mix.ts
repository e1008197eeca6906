import { choices } from "../cells/choice";
import { optionalColumns } from "../cells/columns";
import { aboveZero, anyNumber, notNegative, quantity } from "../cells/quantity";
import { optionalVector, vector } from "../cells/vector";
import { whole } from "../cells/whole";
import { bindingLimits } from "../model/cost/mix/account";
import { cheapestMix } from "../model/cost/mix/mix";
import { shapes } from "../model/strength/response";

const mixed = whole(
  "COST.MIX",
  [
    quantity("target", "N·m/g", notNegative),
    vector("plateauGains", "n", "N·m/g", aboveZero),
    vector("scales", "n", "kg/t", aboveZero),
    vector("prices", "n", "money/kg", aboveZero),
    vector("maxima", "n", "kg/t", notNegative),
    choices("shapes", "n", shapes, "exponential"),
    optionalColumns("sideUse", "per unit of the option", anyNumber),
    optionalVector("sideLimits", "m", "as sideUse sums to", notNegative),
  ],
  (target, gains, scales, prices, maxima, shapesOfAll, sideUse, sideLimits) => {
    const mix = cheapestMix(
      target,
      gains,
      scales,
      prices,
      maxima,
      shapesOfAll,
      sideUse,
      sideLimits ?? [],
    );
    const { options, cost, nextGain, single } = mix;
    return [
      [
        "option",
        "amount [kg/t, kWh/t]",
        "share of the gain [fraction]",
        "cost [money/t]",
        "marginal cost [money/t per N·m/g]",
      ],
      ...options.map((option) => [
        option.number,
        option.amount,
        option.shareOfGain,
        option.cost,
        option.marginalCost ?? "",
      ]),
      ["total", "", "", cost, nextGain ?? ""],
      ["limits that bind", bindingLimits(mix), "", "", ""],
      [
        "saving against the cheapest single option [money/t]",
        single?.saving ?? "",
        single === undefined ? "no option does it alone" : `option ${single.option}`,
        "",
        "",
      ],
    ];
  },
);

/**
 * The cheapest mix of options (additives, refining) that reaches a gain in strength within side limits
 * (drainage, COD). Gains are taken as additive, which treatments that compete for the same bonds are not:
 * confirm the mix by a trial.
 * @customfunction COST.MIX
 * @param target Gain in strength that is wanted [N·m/g]; 0 or more.
 * @param plateauGains What each response reaches in the end, at its peak where peaked, per unit where straight [N·m/g]; above 0; a row or a column.
 * @param scales Scale of each response, as STRENGTH.FIT gives it; not used where straight [kg/t, or kWh/t for refining]; above 0.
 * @param prices Price of each option [money/kg, or money/kWh]; above 0.
 * @param maxima Most that may be used of each option [kg/t, or kWh/t]; 0 or more.
 * @param [shapes] Shape of each response [exponential, hyperbolic, peaked or straight]; one for all or one each; exponential if left out.
 * @param [sideUse] What a unit of each option takes of each limit [limit's unit per kg/t or kWh/t]; a row an option, a column a limit; below 0 where it gives some back; none if left out.
 * @param [sideLimits] Most that the mix may take of each [the limit's own unit]; 0 or more; none if left out.
 * @returns Table, a row an option: amount [kg/t, kWh/t], share of the gain [fraction], cost [money/t], cost of its next N·m/g [money/t per N·m/g]; then the total with what the next N·m/g costs, the limits that bind, the saving against the cheapest option that does it alone [money/t].
 * @equation \min \sum_i p_i x_i \quad \text{with} \quad \sum_i \text{gain}_i(x_i) \ge \text{target}, \quad 0 \le x_i \le \text{max}_i, \quad \sum_i \text{side}_{ij} x_i \le \text{limit}_j
 * @range Concave responses: a peaked one up to its peak. The global optimum, to 1e-8 of its cost. #N/A with the largest gain in reach where the target is beyond it.
 * @source Convex optimisation by an interior-point method: Mehrotra, SIAM J. Optim. 2 (1992) 575.
 * @words optimum, least cost, starch or refining, blend, combination, drainage limit
 * @example =WETEND.COST.MIX(6, {8,6,0.25}, {6,4,1}, {0.55,0.75,0.11}, {20,15,60}, {"exponential","exponential","straight"}, {0.3,0.5,0.8}, 8) → {"option","amount [kg/t, kWh/t]","share of the gain [fraction]","cost [money/t]","marginal cost [money/t per N·m/g]";1,2.482791,0.451821,1.365535,0.623928;2,0.855692,0.192589,0.641769,0.619264;3,8.534146,0.355589,0.938756,0.44;"total","","",2.94606,0.645817;"limits that bind","side limit 1","","","";"saving against the cheapest single option [money/t]",1.628711,"option 1","",""}
 * @requiresAddress
 */
export function costMix(
  target: any[][],
  plateauGains: any[][],
  scales: any[][],
  prices: any[][],
  maxima: any[][],
  shapes: any[][],
  sideUse: any[][],
  sideLimits: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return mixed(
    target,
    plateauGains,
    scales,
    prices,
    maxima,
    shapes,
    sideUse,
    sideLimits,
    invocation,
  );
}
