import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { effluent, mill, starch } from "../harrow-fen/mill";
import { caution, day, down, fraction, heading, note, number, result } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";

/** Monday 3 November 2025, 6 in the morning. */
const firstStep = 45964.25;

const inputs = [
  heading("The machine"),
  {
    kind: "input" as const,
    name: "starts",
    label: "First step set at",
    unit: "",
    value: firstStep,
    format: "yyyy-mm-dd hh:mm",
    allow: day,
    help: "Day and time, as 2025-11-03 06:00.",
  },
  number("throughput", "Oven-dry throughput", "t/h", 13.1, "0.0", {
    from: 0.1,
    to: 200,
    help: "Oven-dry furnish; from the reel by WETEND.DOSE.THROUGHPUT.",
  }),
  number("loopVolume", "White-water loop with its chests", "m³", 900, "#,##0", {
    from: 1,
    to: 100_000,
    help: "All volumes that the white water goes through, silo and broke system included.",
  }),
  number("purge", "Water that leaves the loop", "m³/h", Math.round(effluent.flow / 24), "0", {
    from: 0.1,
    to: 10_000,
    help: "The effluent, not the flow around the loop.",
  }),
  fraction("remaining", "Part of a step still missing then", 0.05, {
    from: 0.001,
    to: 0.5,
    help: "When sampling begins. 5 % is usual (common practice, no source).",
  }),
  number("sampling", "Time for sampling at each step", "h", 4, "0.0", {
    from: 0.1,
    to: 100,
    help: "Two reels at least, with samples from each.",
  }),
  fraction("pumpStrength", "Strength of the solution", starch.solutionStrength, {
    from: 0.0001,
    to: 0.25,
    help: "Dry active starch as it is pumped.",
  }),
  number("pumpDensity", "Density of the solution", "kg/L", starch.solutionDensity, "0.00", {
    from: 0.5,
    to: 2,
    help: "Measured at the temperature of dosing.",
  }),
  fraction("retention", "Overall retention", 0.83, {
    help: "From the workbook dose-and-effluent.",
  }),
  number("codFactor", "COD of the starch", "g/g", starch.codFactor, "0.00", {
    to: 8,
    help: "Measured on your own additive. 1.1 is typical of starch, from memory.",
  }),
  number("background", "COD of everything else", "kg/d", effluent.background.cod, "#,##0", {
    to: 1_000_000,
    help: "Raw load while no starch is dosed.",
  }),
  number("limit", "Permitted COD", "kg/d", effluent.limit.cod, "#,##0", {
    to: 1_000_000,
    help: "Load that may leave in a day.",
  }),
];

const waiting = [
  heading("The waiting"),
  result(
    "wait",
    "Wait after each step",
    "h",
    "0.0",
    "WETEND.TRIAL.SETTLING({loopVolume},{purge},{remaining})",
    { headline: true },
  ),
  result("waited", "In the schedule, to half an hour", "h", "0.0", "ROUNDUP(2*{wait},0)/2"),
  result("runLength", "The whole run", "h", "0.0", "ROWS({run.dose})*({waited}+{sampling})"),
];

const clock = "ddd d mmm hh:mm";

const steps = 5;
const column = spillColumns(25, steps);

const schedule: readonly Part[] = [
  {
    kind: "table",
    at: "A24",
    name: "run",
    columns: [
      {
        key: "step",
        header: "Step",
        values: ["1  blank", "2  half", "3  the dose", "4  beyond", "5  blank again"],
      },
      {
        key: "dose",
        header: "Dose",
        unit: "kg/t",
        values: [0, 4, starch.dose, 10, 0],
        format: "0.0",
        allow: { number: { from: 0, to: 100 } },
        help: "Dry active additive per tonne of oven-dry furnish.",
      },
    ],
  },
  column(
    "C",
    "pumps",
    "Pump (L/h)",
    "#,##0",
    "WETEND.DOSE.PUMP({run.dose},{throughput},{pumpStrength},{pumpDensity})",
  ),
  column(
    "D",
    "begins",
    "Set at",
    clock,
    "{starts}+(SEQUENCE(ROWS({run.dose}))-1)*({waited}+{sampling})/24",
  ),
  column("E", "sampled", "Sample from", clock, "{begins}+{waited}/24"),
  column("F", "ends", "Sample to", clock, "{sampled}+{sampling}/24"),
  column(
    "G",
    "runCod",
    "COD (kg/d)",
    "#,##0",
    "{background}+WETEND.EFFLUENT.COD({run.dose},{retention},24*{throughput},{codFactor})",
  ),
  { kind: "rule", on: "{runCod}", when: { above: "{limit}" }, look: "breach" },
  { kind: "rule", on: "{runCod}", when: { above: "0.95*{limit}" }, look: "warning" },
];

const hours = 25;
const arriving = spillColumns(6, hours);

const approach: readonly Part[] = [
  ...down("I4", [heading("For the chart")]),
  arriving("I", "hours", "Time (h)", "0.0", `SEQUENCE(${hours},1,0,2*{wait}/${hours - 1})`),
  arriving(
    "J",
    "arrived",
    "Arrived",
    "0 %",
    "WETEND.RETENTION.WHITEWATER(1,{purge},{loopVolume},{hours})/WETEND.RETENTION.WHITEWATER(1,{purge})",
  ),
  arriving("K", "enough", "Enough", "0 %", "1-{remaining}+0*{hours}"),
];

export const millRunSheet: SheetPlan = {
  name: "Mill run",
  widths: { A: 36, B: 18, C: 14, D: 19, E: 19, F: 19, G: 14, H: 3, I: 11, J: 11, K: 11 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Mill run" },
    ...down("A2", [
      note(`One run at ${mill.name}, an invented mill, from the laboratory's dose to the machine.`),
    ]),
    ...down("A4", inputs),
    ...down("A18", waiting),
    ...down("A23", [heading("The steps")]),
    ...schedule,
    {
      kind: "chart",
      at: "A31",
      width: 830,
      height: 300,
      chart: "curve",
      title: "How far the white water has followed a step",
      alt: "A curve that rises ever more slowly towards 100 % of a step over twice the waiting time; it crosses the dashed line of what is enough at the waiting time.",
      x: { title: "Time after the step (h)", from: 0, format: "0" },
      y: { title: "Of the step (%)", from: 0, to: 1, format: "0 %" },
      series: [
        { name: "white water", values: "{arrived}", x: "{hours}" },
        { name: "enough", values: "{enough}", x: "{hours}", role: "limit" },
      ],
    },
    ...down("A47", [
      heading("Before, during, after"),
      note(
        "Before: tell the crew, the effluent plant and the laboratory; agree who may stop it, and on what sign. Keep furnish, refining and speed as they are.",
        7,
      ),
      note(
        "During: check the pump against a measured volume and a clock. Sample only after the wait. Write down breaks, foam, drainage, retention, vacuum, steam, COD.",
        7,
      ),
      note(
        "After: go back to the blank and sample it again. What does not come back was not due to the starch.",
        7,
      ),
      heading("Caution"),
      caution(
        "Stop at foam, at a breach of the permit, or when drainage or retention fails. Never go on only to finish the ladder.",
        7,
      ),
      caution(
        "Hot starch lines are under pressure and scald; dust of starch can explode; chests and pits are confined spaces where hydrogen sulphide gathers; nips and rolls maim. Work on them is for trained people with a permit.",
        7,
      ),
      caution(
        "The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work.",
        7,
      ),
    ]),
    ...approach,
  ],
};
