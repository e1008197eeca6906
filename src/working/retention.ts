import { loopBalance } from "../model/retention/balance";
import { headboxLoading, overallRetention } from "../model/retention/loop";
import { whiteWaterConcentration } from "../model/retention/white-water";
import type { Vector } from "../model/vectors";
import { difference, exponential, negative, product, quotient, sum, valued } from "./expression";
import { amount, type Curves, type Flow, percent, pictured, sampled, stack } from "./picture";
import { each, line, numbered, type Step, step, type Working } from "./step";

const at = (vector: Vector, i: number) => vector[i] as number;

export const retention = {
  "RETENTION.FIRSTPASS": (headbox: number, whiteWater: number, flowRatio: number): Working => {
    const lost = quotient(product(whiteWater, flowRatio), headbox);
    return {
      steps: [
        step("Solids that go with the white water", lost, "fraction"),
        step("Solids that stay in the sheet", difference(1, lost), "fraction"),
      ],
      picture: stack("Solids of the headbox", "fraction", [
        { label: "in the sheet", value: difference(1, lost).value },
        { label: "white water", value: lost.value },
      ]),
      remarks: [
        "One pass, of the solids. With the loop closed more stays (RETENTION.LOOP), and what is dissolved goes with the water.",
      ],
    };
  },

  "RETENTION.COMPONENT": (
    headbox: number,
    headboxShare: number,
    whiteWater: number,
    whiteWaterShare: number,
    flowRatio: number,
  ): Working => {
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
      picture: stack("The component in the headbox", "fraction", [
        { label: "in the sheet", value: difference(1, lost).value },
        { label: "white water", value: lost.value },
      ]),
      remarks: [
        "Shares found as ash are both burnt at one temperature: 525 °C keeps carbonate, 900 °C leaves 56 % of its mass.",
      ],
    };
  },

  "RETENTION.ADDITIVE": (
    amounts: Vector,
    retentions: Vector,
    dissolved: number,
    carried: number,
  ): Working => {
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
      picture: stack("The additive after one pass", "unit of the amounts", [
        ...kept.map(({ label, value }) => ({ label: `kept, ${label}`, value: Number(value) })),
        { label: "lost", value: lost.value },
      ]),
      remarks: [
        "One pass: additive on lost fines is lost with them. With the loop closed each part returns at its own retention (RETENTION.OVERALL).",
        ...(dissolved > 0 && carried === 0
          ? ["None of the dissolved part is taken to stay with the water in the web."]
          : []),
      ],
    };
  },

  "RETENTION.LOOP": (firstPass: number, recycled: number, degraded: number): Working => ({
    steps: [...round(firstPass, recycled, degraded), overallStep(firstPass, recycled, degraded)],
    picture: loopFlow("The loop for each kg dosed", "kg", 1, firstPass, recycled, degraded),
    remarks: ofTheLoop(recycled, degraded),
  }),

  "RETENTION.OVERALL": (
    amounts: Vector,
    firstPass: Vector,
    recycled: Vector,
    degraded: Vector,
  ): Working => {
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
      picture: stack("The additive with the loop closed", "unit of the amounts", [
        ...kept.map(({ label, value }) => ({ label: `kept, ${label}`, value: Number(value) })),
        { label: "lost", value: difference(all.value, keptInAll.value).value },
      ]),
      remarks: [
        "Each population loops at its own first-pass retention: one blended retention for all would flatter.",
      ],
    };
  },

  "RETENTION.BALANCE": (
    dose: number,
    firstPass: number,
    recycled: number,
    degraded: number,
  ): Working => {
    const load = quotient(dose, leaving(firstPass, recycled, degraded));
    const unretained = product(load.value, difference(1, firstPass));
    const balance = loopBalance(dose, firstPass, recycled, degraded);
    const { retained, toSewer } = balance;
    const share = percent(overallRetention(firstPass, recycled, degraded));
    return {
      says: `Of ${amount(dose, "kg/t")} dosed ${amount(retained, "kg/t")} stay in the sheet, ${share}; ${amount(toSewer, "kg/t")} go to the sewer and ${amount(balance.degraded, "kg/t")} are degraded.`,
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
  },

  "RETENTION.WHITEWATER": (
    load: number,
    purge: number,
    volume: number | undefined,
    hours: number | undefined,
    decay: number,
  ): Working => {
    const clearance =
      volume === undefined || decay === 0 ? sum(purge) : sum(purge, product(decay, volume));
    const steady = quotient(product(1000, load), clearance);
    const clearing: Step = step("Water cleared each hour", clearance, "m³/h");
    const settling: Step = step("Steady state", steady, "mg/L");
    const remarks = [
      "The purge is the water that leaves for good: the flow around the loop clears nothing.",
    ];
    if (volume === undefined || hours === undefined) {
      return { steps: [clearing, settling], remarks };
    }

    const rate = quotient(clearance, volume);
    const reached =
      clearance.value > 0
        ? product(steady.value, difference(1, exponential(negative(product(rate.value, hours)))))
        : quotient(product(1000, load, hours), volume);
    return {
      steps: [
        clearing,
        ...(clearance.value > 0 ? [settling, step("Share cleared each hour", rate, "1/h")] : []),
        step(
          "Reached from clean water",
          valued(reached, whiteWaterConcentration(load, purge, volume, hours, decay)),
          "mg/L",
        ),
      ],
      ...pictured(() => ({
        ...approach(load, purge, volume, hours, decay),
        ...(clearance.value > 0 ? { level: { label: "steady state", y: steady.value } } : {}),
      })),
      remarks,
    };
  },
};

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

/** The way from clean water, to twice the time that was asked for. */
function approach(
  load: number,
  purge: number,
  volume: number,
  hours: number,
  decay: number,
): Curves {
  const reached = whiteWaterConcentration(load, purge, volume, hours, decay);
  const points = sampled(0, 2 * hours, (time) =>
    whiteWaterConcentration(load, purge, volume, time, decay),
  );
  return {
    kind: "curves",
    title: "White water from clean",
    alt: `White water from clean: ${amount(reached, "mg/L")} after ${amount(hours, "h")}.`,
    x: { label: "time", unit: "h" },
    y: { label: "dissolved additive", unit: "mg/L" },
    curves: [{ label: "white water", points }],
    here: [hours, reached],
  };
}
