import { markOf, type Variance, variances } from "../../model/cost/variance";
import type { Vector } from "../../model/vectors";
import { difference, type Expression, product, sum } from "../expression";
import { bars } from "../picture";
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
  const at = (vector: Vector, i: number) => vector[i] as number;
  const eachPeriod = (what: string, of: (i: number) => Expression): Step =>
    each(
      what,
      periods.map(({ number }, i) => line(String(number), of(i), "money")),
    );
  const planned = sum(
    ...periods.map((_, i) =>
      product(at(standardPrice, i), at(standardDose, i), at(standardOutput, i)),
    ),
  );
  const spent = sum(...periods.map((_, i) => product(at(actualPrice, i), at(actualQuantity, i))));
  return {
    steps: [
      each("The costs that are compared", [
        line("planned", planned, "money"),
        line("spent", spent, "money"),
        line("beyond the plan", difference(spent.value, planned.value), "money"),
      ]),
      eachPeriod("Price: what each kg used cost more than the standard", (i) =>
        product(difference(at(actualPrice, i), at(standardPrice, i)), at(actualQuantity, i)),
      ),
      eachPeriod("Usage: what was used beyond the standard for the output made", (i) =>
        product(
          difference(at(actualQuantity, i), product(at(standardDose, i), at(actualOutput, i))),
          at(standardPrice, i),
        ),
      ),
      eachPeriod("Activity: what the output made beyond the plan takes at the standard", (i) =>
        product(
          difference(at(actualOutput, i), at(standardOutput, i)),
          at(standardDose, i),
          at(standardPrice, i),
        ),
      ),
      {
        kind: "table",
        what: "Together they are all that was spent beyond the plan",
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

const row = (period: Value, { price, usage, activity, total }: Variance): readonly Value[] => [
  period,
  price,
  usage,
  activity,
  total,
  markOf(price),
  markOf(usage),
];
