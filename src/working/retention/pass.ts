import type { Vector } from "../../model/vectors";
import { at } from "../at";
import { difference, product, quotient, sum } from "../expression";
import { each, line, numbered, step, type Working } from "../step";
import { afterOnePass, keptAndLost } from "./pictures";

export function firstPass(headbox: number, whiteWater: number, flowRatio: number): Working {
  const lost = quotient(product(whiteWater, flowRatio), headbox);
  return {
    steps: [
      step("Solids that go with the white water", lost, "fraction"),
      step("Solids that stay in the sheet", difference(1, lost), "fraction"),
    ],
    picture: afterOnePass("Solids of the headbox", lost),
    remarks: [
      "One pass, of the solids. With the loop closed more stays (RETENTION.LOOP), and what is dissolved goes with the water.",
    ],
  };
}

export function component(
  headbox: number,
  headboxShare: number,
  whiteWater: number,
  whiteWaterShare: number,
  flowRatio: number,
): Working {
  const brought = product(headbox, headboxShare);
  const taken = product(whiteWater, whiteWaterShare);
  const lost = quotient(product(taken, flowRatio), brought);
  return {
    steps: [
      each("The component alone", [
        line("in the headbox", brought, "consistency"),
        line("in the white water", taken, "consistency"),
      ]),
      step("Of it, gone with the white water", lost, "fraction"),
      step("Of it, in the sheet", difference(1, lost), "fraction"),
    ],
    picture: afterOnePass("The component in the headbox", lost),
    remarks: [
      "Shares found as ash are both burnt at one temperature: 525 °C keeps carbonate, 900 °C leaves 56 % of its mass.",
    ],
  };
}

export function additive(
  amounts: Vector,
  retentions: Vector,
  dissolved: number,
  carried: number,
): Working {
  const kept = [
    ...Array.from({ length: amounts.length }, (_, i) =>
      line(numbered("on component", i), product(at(amounts, i), at(retentions, i)), "kept"),
    ),
    line("dissolved", product(dissolved, carried), "kept"),
  ];
  const keptInAll = sum(...kept.map(({ value }) => Number(value)));
  const all = sum(...Array.from(amounts), dissolved);
  const lost = difference(all.value, keptInAll.value);
  return {
    steps: [
      each("What stays in the sheet", kept),
      step("Kept in all", keptInAll, "unit of the amounts"),
      step("Additive in all", all, "unit of the amounts"),
      step("Retention of the additive", quotient(keptInAll.value, all.value), "fraction"),
    ],
    picture: keptAndLost("The additive after one pass", kept, lost.value),
    remarks: [
      "One pass: additive on lost fines is lost with them. With the loop closed each part returns at its own retention (RETENTION.OVERALL).",
      ...(dissolved > 0 && carried === 0
        ? ["None of the dissolved part is taken to stay with the water in the web."]
        : []),
    ],
  };
}
