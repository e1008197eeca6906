import type { SheetPlan } from "../../../src/workbook/plan";
import { alternatives } from "../harrow-fen/mill";
import { down, heading, note, number, result } from "../parts/lines";
import { sheetsMade } from "./sheets-made";

const data = `${sheetsMade.dose},${sheetsMade.index}`;
const batches = `${sheetsMade.run},${sheetsMade.block}`;
const points = 25;

const fitted = `WETEND.STRENGTH.FIT(${data},{shape},,${batches})`;

const curves = 1000;

/** kg/t that no limit reaches: what a curve asks for that does not gain enough up to the highest dose tried. */
const never = 1_000_000;

/** The dose on each of the curves that the batches allow; a curve that falls short counts as asking for more. */
const doses = `LET(curve,WETEND.STRENGTH.SAMPLE(${data},${curves},1,{shape},,${batches}),base,INDEX(curve,0,1),IFERROR(WETEND.STRENGTH.DOSEFOR(base+{wantedGain},base,INDEX(curve,0,2),INDEX(curve,0,3),{shape},MAX({results.dose})),${never}))`;
const limit = (row: number) =>
  `LET(limit,INDEX(WETEND.UNCERTAINTY.SUMMARY(${doses}),${row},2),IF(limit<${never},limit,"beyond"))`;

/** The lines of the fit below its parameters, each with the digits that it deserves. */
const goodness = [
  result("residual", "Spread of batches about the curve", "N·m/g", "0.00", `INDEX(${fitted},5,2)`),
  result("rSquared", "R²", "", "0.000", `INDEX(${fitted},6,2)`),
  result("batchesFitted", "Batches", "", "0", `INDEX(${fitted},7,2)`),
  result("lackOfFit", "p of the lack of fit", "", "0.000", `INDEX(${fitted},9,2)`),
  note("p below 0.05: the shape does not fit the points."),
];

const wishes = [
  heading("What is wanted"),
  number("wantedGain", "Gain over the blank", "N·m/g", alternatives.increase, "0.0", {
    from: 0.01,
    to: 1000,
    help: "Of the tensile index, on laboratory sheets.",
  }),
  {
    kind: "input" as const,
    name: "shape",
    label: "Shape of the curve",
    unit: "",
    value: "exponential",
    allow: { oneOf: ["exponential", "hyperbolic", "peaked", "straight"] },
    help: "A line below says which of the four fits the points best.",
  },
];

/** A number, or a word in its place, on the same side. */
const orWord = "0.0;-0.0;0.0;@";

const answer = [
  heading("The answer"),
  result(
    "doseFor",
    "Dose for that gain",
    "kg/t",
    "0.0",
    "WETEND.STRENGTH.DOSEFOR({base}+{wantedGain},{base},{gain},{scale},{shape},MAX({results.dose}))",
    { headline: true },
  ),
  result("doseLow", "Lower limit, 95 %", "kg/t", orWord, limit(4)),
  result("doseHigh", "Upper limit, 95 %", "kg/t", orWord, limit(5)),
  result("base", "Blank", "N·m/g", "0.0", "INDEX({fit},2,2)"),
  result("gain", "Plateau of the gain", "N·m/g", "0.0", "INDEX({fit},3,2)"),
  result("scale", "Scale of the curve", "kg/t", "0.0", "INDEX({fit},4,2)"),
  result(
    "bestShape",
    "Shape that fits best",
    "",
    "@",
    `INDEX(WETEND.STRENGTH.FIT(${data},"best",,${batches}),10,2)`,
  ),
  note(
    "Limits: of a thousand curves that the batches allow. Beyond: above the highest dose tried.",
  ),
  note("For laboratory sheets. What the machine keeps, the mill run shows."),
];

export const fitSheet: SheetPlan = {
  name: "Fit",
  widths: { A: 38, B: 12, C: 17, D: 12, E: 12, F: 3, G: 14, H: 16, I: 16, J: 16 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Fit" },
    ...down("A3", wishes),
    ...down("A7", answer),
    ...down("A18", [heading("The fit")]),
    {
      kind: "spill",
      at: "A19",
      name: "fit",
      firstRow: "header",
      formula: `TAKE(${fitted},4)`,
      room: { rows: 4, columns: 5 },
      format: ["@", "0.00", "0.00", "0.00", "0.00"],
    },
    ...down("A24", goodness),
    ...down("G3", [heading("Curve and band, 95 %")]),
    {
      kind: "spill",
      at: "G5",
      name: "curveDoses",
      headers: ["Dose (kg/t)"],
      formula: `SEQUENCE(${points},1,0,MAX({results.dose})/${points - 1})`,
      room: { rows: points, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: "H5",
      name: "band",
      headers: ["Lower (N·m/g)", "Mean (N·m/g)", "Upper (N·m/g)"],
      formula: `WETEND.STRENGTH.BAND({curveDoses},${data},{shape},,0.95,${batches})`,
      room: { rows: points, columns: 3 },
      format: "0.00",
    },
    {
      kind: "chart",
      at: "A31",
      width: 900,
      height: 380,
      chart: "curve",
      title: "Tensile index against dose",
      alt: "Measured sheets as points at each dose, the fitted curve through them rising ever more slowly, and dotted lines for the 95 % limits of the mean.",
      x: { title: "Dose (kg/t)", from: 0, format: "0" },
      y: { title: "Tensile index (N·m/g)", from: 28, format: "0" },
      series: [
        { name: "fitted mean", values: "{band[2]}", x: "{curveDoses}" },
        { name: "sheets", values: "{results.index}", x: "{results.dose}", role: "measured" },
        { name: "lower limit of the mean", values: "{band[1]}", x: "{curveDoses}", role: "band" },
        { name: "upper limit of the mean", values: "{band[3]}", x: "{curveDoses}", role: "band" },
      ],
    },
  ],
};
