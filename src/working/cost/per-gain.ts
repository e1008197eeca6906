import { product, quotient, sum } from "../expression";
import { stack } from "../picture";
import { step, type Working } from "../step";

interface Way {
  readonly what: string;
  readonly remarks: (otherCost: number) => readonly string[];
}

const AVERAGE =
  "An average over the whole gain: where the response levels off, the next N·m/g costs more (COST.MARGINAL).";

/** What a unit of strength costs on average, by an additive or by refining. */
const perGain =
  ({ what, remarks }: Way) =>
  (amount: number, price: number, increase: number, otherCost: number): Working => {
    const spent = product(amount, price);
    const all = sum(spent.value, otherCost);
    return {
      steps: [
        step(`Cost of the ${what}`, spent, "money/t"),
        ...(otherCost === 0 ? [] : [step("With the other cost", all, "money/t")]),
        step(
          "For each unit of strength gained",
          quotient(all.value, increase),
          "money/t per N·m/g",
        ),
      ],
      ...(otherCost === 0
        ? {}
        : {
            picture: stack("What the gain costs", "money/t", [
              { label: what, value: spent.value },
              { label: "other", value: otherCost },
            ]),
          }),
      remarks: [AVERAGE, ...remarks(otherCost)],
    };
  };

export const additivePerGain = perGain({
  what: "additive",
  remarks: () => [
    "The increase is what was gained at this dose, not the gain that the curve reaches in the end.",
  ],
});

export const refiningPerGain = perGain({
  what: "power",
  remarks: (otherCost) => [
    "The energy is net: what turns the rotor without treating fibre is left out (REFINING.ENERGY).",
    ...(otherCost === 0 ? ["Slower drainage and more drying cost too, and are not in it."] : []),
  ],
});
