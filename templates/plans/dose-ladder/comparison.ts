import type { SheetPlan } from "../../../src/workbook/plan";
import { down, heading, note, result } from "../parts/lines";

const levels = 8;

/**
 * Whether each sheet is from a block that holds every level. A comparison with days taken out needs whole
 * blocks; a batch that was lost costs its block here, and only itself in the fit.
 */
const compared = [
  "levels,TRANSPOSE(UNIQUE(FILTER({results.dose},ISNUMBER({results.index}))))",
  'held,COUNTIFS({results.block},{results.block},{results.dose},levels,{results.index},">0")',
  "whole,MMULT(--(held>0),SEQUENCE(COLUMNS(levels),1,1,0))=COLUMNS(levels)",
  "kept,whole*ISNUMBER({results.index})",
].join(",");
const kept = (column: string) => `FILTER({results.${column}},kept)`;

export const comparisonSheet: SheetPlan = {
  name: "Comparison",
  widths: {
    A: 32,
    B: 11,
    C: 15,
    D: 13,
    E: 15,
    F: 15,
    G: 15,
    H: 10,
    I: 3,
    J: 14,
    K: 10,
    L: 10,
    M: 10,
  },
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
      result(
        "blocksLeftOut",
        "Blocks left out, not whole",
        "",
        "0",
        "ROWS(UNIQUE({results.block}))-MIN({compared[2]})",
      ),
      note(
        "Every dose against the blank, batch by batch, differences between blocks taken out. Limits and p allow for the number of doses.",
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
      formula: `LET(${compared},DROP(WETEND.TRIAL.COMPARE(${kept("dose")},${kept("index")},${kept("block")},${kept("run")},0,{alpha}),1))`,
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
    { kind: "rule", on: "{blocksLeftOut}", when: { above: 0 }, look: "warning" },
    {
      kind: "chart",
      at: "A18",
      width: 860,
      height: 340,
      chart: "points and lines",
      title: "Gain over the blank, with its limits",
      alt: "Points for each dose: the difference of tensile index from the blank, rising with the dose, with dotted lines for the lower and upper limits. Where the lower limit is above 0 the difference is shown.",
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
