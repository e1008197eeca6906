import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { rates } from "../harrow-fen/beaker";
import { ofFurnish } from "../harrow-fen/furnish";
import { down, heading, note, number, result } from "../parts/lines";

const seconds = [0, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 45, 60];

const ratesTable: Part = {
  kind: "table",
  at: "A4",
  name: "uptake",
  columns: [
    { key: "component", header: "Component", values: ofFurnish("component") },
    {
      key: "rate",
      header: "Rate",
      unit: "L/(mg·s)",
      values: rates,
      format: "0.0000",
      allow: { number: { from: 0.0000001, to: 100 } },
      help: "From samples taken some seconds after dosing; here invented.",
    },
  ],
};

const timed = (times: string) =>
  `WETEND.PARTITION.TIMED(${times},{dose},INDEX({places.consistency},ROWS({places.consistency})),{furnish.share},{furnish.surface},{furnish.capacity},{furnish.halfLoad},{uptake.rate})`;

const answer = [
  heading("Before the wire"),
  number("contact", "Time from dosing to the wire", "s", 12, "0", {
    from: 0,
    to: 86_400,
    help: "Volume of the line between them over its flow.",
  }),
  result(
    "boundByThen",
    "Held by then",
    "of the dose",
    "0.0 %",
    `1-INDEX(${timed("{contact}")},1,4)/{dose}`,
    { headline: true },
  ),
  result(
    "boundInTheEnd",
    "Held in the end",
    "of the dose",
    "0.0 %",
    "INDEX({useful},1)+INDEX({split},1,3)/{dose}",
  ),
];

export const timeSheet: SheetPlan = {
  name: "Time",
  widths: { A: 36, B: 17, C: 13, D: 13, E: 13 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Time" },
    ...down("A3", [heading("How fast the surfaces take it up")]),
    ratesTable,
    ...down("A9", answer),
    ...down("A14", [
      note(
        "Everything together at the last place of the stock line, all of the starch dissolved at the start. One site and one rate a component: pores that fill later are not in it.",
        5,
      ),
    ]),
    {
      kind: "chart",
      at: "A16",
      width: 640,
      height: 340,
      chart: "curve",
      title: "Uptake after dosing",
      alt: "Four curves over the first minute: the dissolved starch falls quickly; fines and filler take it up within seconds, fibre more slowly.",
      x: { title: "Time after dosing (s)", from: 0, to: 60, format: "0" },
      y: { title: "Starch (kg/t)", from: 0, format: "0" },
      series: ["on fibre", "on fines", "on filler", "dissolved"].map((name, index) => ({
        name,
        values: `{course[${index + 1}]}`,
        x: "{moments.time}",
      })),
    },
    ...down("A34", [heading("The course of it")]),
    {
      kind: "table",
      at: "A35",
      name: "moments",
      columns: [
        {
          key: "time",
          header: "Time after dosing",
          unit: "s",
          values: seconds,
          format: "0.0",
          allow: { number: { from: 0, to: 86_400 } },
          help: "Seconds after all have met.",
        },
      ],
    },
    {
      kind: "spill",
      at: "B36",
      name: "course",
      headers: ["On fibre (kg/t)", "On fines (kg/t)", "On filler (kg/t)", "Dissolved (kg/t)"],
      formula: timed("{moments.time}"),
      room: { rows: seconds.length, columns: 4 },
      format: "0.00",
    },
  ],
};
