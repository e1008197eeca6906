import { loopBalance } from "../../model/retention/balance";
import { headboxLoading, overallRetention } from "../../model/retention/loop";
import type { Vector } from "../../model/vectors";
import { at } from "../at";
import { difference, product, quotient, sum, valued } from "../expression";
import { amount, type Flow, percent } from "../picture";
import { each, line, numbered, type Step, step, type Working } from "../step";
import { keptAndLost } from "./pictures";

export const closedLoop = (firstPass: number, recycled: number, degraded: number): Working => ({
  steps: [...round(firstPass, recycled, degraded), overallStep(firstPass, recycled, degraded)],
  picture: loopFlow("The loop for each kg dosed", "kg", 1, firstPass, recycled, degraded),
  remarks: ofTheLoop(recycled, degraded),
});

export function mixture(
  amounts: Vector,
  firstPass: Vector,
  recycled: Vector,
  degraded: Vector,
): Working {
  const populations = Array.from({ length: amounts.length }, (_, i) => i).filter(
    (i) => at(amounts, i) > 0,
  );
  const own = (i: number) => loop(at(firstPass, i), at(recycled, i), at(degraded, i));
  const kept = populations.map((i) =>
    line(numbered("population", i), product(at(amounts, i), own(i).value), "kept"),
  );
  const all = sum(...Array.from(amounts));
  const keptInAll = sum(...kept.map(({ value }) => Number(value)));
  return {
    steps: [
      each(
        "Overall retention of each population",
        populations.map((i) => line(numbered("population", i), own(i), "fraction")),
      ),
      each("What stays of each: amount × retention", kept),
      step("Overall retention of the mixture", quotient(keptInAll, all), "fraction"),
    ],
    picture: keptAndLost(
      "The additive with the loop closed",
      kept,
      difference(all.value, keptInAll.value).value,
    ),
    remarks: [
      "Each population loops at its own first-pass retention: one blended retention for all would flatter.",
    ],
  };
}

export function balance(
  dose: number,
  firstPass: number,
  recycled: number,
  degraded: number,
): Working {
  const load = quotient(dose, leaving(firstPass, recycled, degraded));
  const unretained = product(load.value, difference(1, firstPass));
  const goes = loopBalance(dose, firstPass, recycled, degraded);
  const { retained, toSewer } = goes;
  const share = percent(overallRetention(firstPass, recycled, degraded));
  return {
    says: `Of ${amount(dose, "kg/t")} dosed ${amount(retained, "kg/t")} stay in the sheet, ${share}; ${amount(toSewer, "kg/t")} go to the sewer and ${amount(goes.degraded, "kg/t")} are degraded.`,
    steps: [
      ...round(firstPass, recycled, degraded),
      step("Not retained in a pass", unretained, "kg/t"),
      each("The balance", [
        line("headbox load", load, "kg/t"),
        line("retained", product(firstPass, load.value), "kg/t"),
        line("to sewer", product(unretained.value, difference(1, recycled)), "kg/t"),
        line("degraded", product(unretained.value, recycled, degraded), "kg/t"),
        line("overall retention", loop(firstPass, recycled, degraded), "fraction"),
      ]),
    ],
    picture: loopFlow("Where the dose goes", "kg/t", dose, firstPass, recycled, degraded),
    remarks: ofTheLoop(recycled, degraded),
  };
}

/** What leaves the round of one pass: 1 − (1−f)·r·(1−d). */
const leaving = (firstPass: number, recycled: number, degraded: number) =>
  valued(
    difference(1, comingRound(firstPass, recycled, degraded)),
    1 / headboxLoading(firstPass, recycled, degraded),
  );

const comingRound = (firstPass: number, recycled: number, degraded: number) =>
  product(difference(1, firstPass), recycled, difference(1, degraded));

const loop = (firstPass: number, recycled: number, degraded: number) =>
  quotient(firstPass, leaving(firstPass, recycled, degraded));

const round = (firstPass: number, recycled: number, degraded: number): readonly Step[] => [
  step("Comes round again after a pass", comingRound(firstPass, recycled, degraded), "fraction"),
  step(
    "Headbox load against the dose",
    quotient(1, leaving(firstPass, recycled, degraded)),
    "times",
  ),
];

const overallStep = (firstPass: number, recycled: number, degraded: number): Step =>
  step("Overall retention", loop(firstPass, recycled, degraded), "fraction");

const ofTheLoop = (recycled: number, degraded: number): readonly string[] =>
  recycled > 0 && degraded === 0
    ? [
        "What comes round is taken to stay whole. Native starch is eaten by enzymes and microbes on the way: with a part degraded the answer falls.",
      ]
    : ["What is degraded adds no strength, and is oxygen demand in the effluent all the same."];

function loopFlow(
  title: string,
  unit: string,
  dose: number,
  firstPass: number,
  recycled: number,
  degraded: number,
): Flow {
  const balance = loopBalance(dose, firstPass, recycled, degraded);
  const returned = balance.headboxLoad - dose;
  const streams = [
    { from: "dose", to: "headbox", value: dose },
    { from: "headbox", to: "sheet", value: balance.retained },
    { from: "headbox", to: "sewer", value: balance.toSewer },
    { from: "headbox", to: "degraded", value: balance.degraded },
    { from: "white water", to: "headbox", value: returned },
  ];
  const overall = amount(100 * overallRetention(firstPass, recycled, degraded), "%");
  const words = `${amount(balance.headboxLoad, unit)} pass the headbox, ${amount(returned, unit)} of it come back; ${amount(balance.retained, unit)} stay in the sheet (${overall}), ${amount(balance.toSewer, unit)} go to the sewer and ${amount(balance.degraded, unit)} are degraded`;
  return { kind: "flow", title, unit, streams, alt: `Of ${amount(dose, unit)} dosed, ${words}.` };
}
