import { type BudgetLine, budget } from "../../model/cost/budget";
import type { Vector } from "../../model/vectors";
import { at } from "../at";
import { difference, product, quotient } from "../expression";
import { amount, money } from "../picture";
import { each, line, type Value, type Working } from "../step";
import { overPeriods } from "./periods";

export function budgeted(
  outputs: Vector,
  doses: Vector,
  prices: Vector,
  losses: Vector | undefined,
  names: ArrayLike<string | number> | undefined,
): Working {
  const { periods, total } = budget(outputs, doses, prices, losses ?? [0]);
  const nameOf = (i: number) => names?.[i] ?? i + 1;
  const needed = (i: number) => product(at(outputs, i), at(doses, i));
  const bought = (i: number) =>
    losses === undefined ? needed(i) : quotient(needed(i), difference(1, at(losses, i)));
  const lost = total.quantity - periods.reduce((sum, _, i) => sum + needed(i).value, 0);
  const perTonne =
    total.costPerTonne === undefined ? "" : `, ${amount(total.costPerTonne, "money/t")}`;
  return {
    says: `${money(total.cost)} in all${perTonne}, for ${amount(total.output, "t")} and ${amount(total.quantity, "kg")} bought.`,
    steps: [
      each(
        losses === undefined
          ? "Additive to buy: output · dose"
          : "Additive to buy: output · dose / (1 − loss)",
        periods.map((_, i) => line(String(nameOf(i)), bought(i), "kg")),
      ),
      each(
        "What it costs",
        periods.map(({ quantity }, i) =>
          line(String(nameOf(i)), product(quantity, at(prices, i)), "money"),
        ),
      ),
      {
        kind: "table",
        what: "Period by period, and all together",
        columns: [
          "period",
          "output [t]",
          "additive [kg]",
          "cost [money]",
          "cost [money/t]",
          "cumulative [money]",
        ],
        rows: [...periods.map((own, i) => row(nameOf(i), own)), row("total", total)],
      },
    ],
    picture: overPeriods(
      "What the additive costs",
      "money",
      periods.map(({ cost }, i) => ({ label: String(nameOf(i)), value: cost })),
    ),
    remarks: [
      "Output is oven-dry furnish, broke and filler included and each tonne counted once: paper made or the flow of stock would be another number.",
      ...(losses !== undefined && lost > 0
        ? [`${amount(lost, "kg")} of it are bought and never reach the machine.`]
        : []),
    ],
  };
}

const row = (period: Value, own: BudgetLine): readonly Value[] => [
  period,
  own.output,
  own.quantity,
  own.cost,
  own.costPerTonne ?? "",
  own.cumulative,
];
