import { markOf, type Variance, variances } from "../../model/cost/variance";
import type { Vector } from "../../model/vectors";
import { at } from "../at";
import { difference, type Expression, product, sum } from "../expression";
import { bars, grouped, money } from "../picture";
import { each, line, type Step, type Value, type Working } from "../step";

export function variance(
  standardPrice: Vector,
  standardDose: Vector,
  standardOutput: Vector,
  actualPrice: Vector,
  actualQuantity: Vector,
  actualOutput: Vector,
): Working {
  const { periods, total } = variances(
    standardPrice,
    standardDose,
    standardOutput,
    actualPrice,
    actualQuantity,
    actualOutput,
  );
  const eachPeriod = (what: string, of: (i: number) => Expression): Step =>
    each(
      what,
      periods.map(({ number }, i) => line(String(number), of(i), "money")),
    );
  // Of many periods the costs are added, not their products, which no line would hold.
  const cost = (...factors: readonly number[]) =>
    periods.length === 1 ? product(...factors) : product(...factors).value;
  const planned = sum(
    ...periods.map((_, i) =>
      cost(at(standardPrice, i), at(standardDose, i), at(standardOutput, i)),
    ),
  );
  const spent = sum(...periods.map((_, i) => cost(at(actualPrice, i), at(actualQuantity, i))));
  return {
    says: inWords(total),
    steps: [
      each("The costs that are compared", [
        line("planned", planned, "money"),
        line("spent", spent, "money"),
        line("above the plan", difference(spent.value, planned.value), "money"),
      ]),
      eachPeriod("Price: what the kilograms used cost above the standard", (i) =>
        product(difference(at(actualPrice, i), at(standardPrice, i)), at(actualQuantity, i)),
      ),
      eachPeriod("Usage: what was used above the standard for the output made", (i) =>
        product(
          difference(at(actualQuantity, i), product(at(standardDose, i), at(actualOutput, i))),
          at(standardPrice, i),
        ),
      ),
      eachPeriod("Activity: what the output made above the plan takes at the standard", (i) =>
        product(
          difference(at(actualOutput, i), at(standardOutput, i)),
          at(standardDose, i),
          at(standardPrice, i),
        ),
      ),
      {
        kind: "table",
        what: "Together they are all that was spent above the plan",
        columns: [
          "period",
          "price [money]",
          "usage [money]",
          "activity [money]",
          "total [money]",
          "price mark",
          "usage mark",
        ],
        rows: [...periods.map((own) => row(own.number, own)), row("total", total)],
      },
    ],
    picture: bars("Why the cost differs from the plan", "money", [
      { label: "price", value: total.price },
      { label: "usage", value: total.usage },
      { label: "activity", value: total.activity },
      { label: "total", value: total.total },
    ]),
    remarks: [
      "Activity is neither good nor bad: more paper takes more additive.",
      "Price is counted on the quantity used, not on what was bought for stock.",
    ],
  };
}

function inWords({ price, usage, activity, total }: Variance): string {
  const way = total < 0 ? "below" : "above";
  return `${money(Math.abs(total))} ${way} the plan: price ${grouped(price, 2)}, usage ${grouped(usage, 2)}, activity ${grouped(activity, 2)}.`;
}

const row = (period: Value, { price, usage, activity, total }: Variance): readonly Value[] => [
  period,
  price,
  usage,
  activity,
  total,
  markOf(price),
  markOf(usage),
];
