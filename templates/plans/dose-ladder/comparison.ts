import type { SheetPlan } from "../../../src/workbook/plan";
import { down, heading, note, result } from "../parts/lines";
import { sheetsMade } from "./sheets-made";

const levels = 8;

export const comparisonSheet: SheetPlan = {
  name: "Comparison",
  widths: { A: 28, B: 11, C: 13, D: 13, E: 14, F: 13, G: 13, H: 10 },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Comparison" },
    ...down("A3", [
      heading("Which doses differ from the blank?"),
      result(
        "lowestShown",
        "Lowest dose shown to differ",
        "kg/t",
        "0.0",
        'LET(p,{compared[8]},shown,ISNUMBER(p)*(p<{alpha}),IF(SUM(shown)=0,"none",MIN(IF(shown,{compared[1]}))))',
        { headline: true },
      ),
      note(
        "Every dose against the blank, batch by batch, days taken out. Limits and p allow for the number of doses.",
        8,
      ),
    ]),
    {
      kind: "spill",
      at: "A9",
      name: "compared",
      headers: [
        "Dose (kg/t)",
        "Batches",
        "Mean (N·m/g)",
        "Standard deviation",
        "Difference (N·m/g)",
        "Lower (N·m/g)",
        "Upper (N·m/g)",
        "p",
      ],
      formula: `DROP(WETEND.TRIAL.COMPARE(${sheetsMade.dose},${sheetsMade.index},${sheetsMade.block},${sheetsMade.run},0,{alpha}),1)`,
      room: { rows: levels, columns: 8 },
      format: [
        "0.0",
        "0",
        "0.00",
        "0.00",
        "+0.00;-0.00;0.00",
        "+0.00;-0.00;0.00",
        "+0.00;-0.00;0.00",
        '[<0.001]"< 0.001";0.000',
      ],
    },
    {
      kind: "rule",
      on: "{compared[8]}",
      when: { formula: "AND(ISNUMBER({cell}),{cell}<{alpha})" },
      look: "good",
    },
    {
      kind: "chart",
      at: "A18",
      width: 860,
      height: 340,
      chart: "points and lines",
      title: "Gain over the blank, with its limits",
      alt: "Points for each dose: the difference of tensile index from the blank, rising with the dose, with dotted lines for the lower and upper limits. Where the lower limit is above nothing the difference is shown.",
      x: { title: "Dose (kg/t)", from: 0, format: "0" },
      y: { title: "Gain of tensile index (N·m/g)", format: "0" },
      series: [
        { name: "gain", values: "{gains[1]}", x: "{gainDoses}" },
        { name: "lower limit", values: "{gains[2]}", x: "{gainDoses}", role: "band" },
        { name: "upper limit", values: "{gains[3]}", x: "{gainDoses}", role: "band" },
      ],
    },
    ...down("J7", [heading("For the chart")]),
    {
      kind: "spill",
      at: "J9",
      name: "gainDoses",
      headers: ["Dose (kg/t)"],
      formula: "FILTER({compared[1]},ISNUMBER({compared[8]}))",
      room: { rows: levels, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: "K9",
      name: "gains",
      headers: ["Gain", "Lower", "Upper"],
      formula: "FILTER(CHOOSECOLS({compared},5,6,7),ISNUMBER({compared[8]}))",
      room: { rows: levels, columns: 3 },
      format: "0.00",
    },
  ],
};
