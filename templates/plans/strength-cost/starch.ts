import type { SheetPlan } from "../../../src/workbook/plan";
import { sheetFormer } from "../harrow-fen/additives";
import { ladderBatches } from "../harrow-fen/ladder";
import { down, fraction, heading, note, result } from "../parts/lines";

const batches = ladderBatches.length;
const points = 21;
const first = 6;

const laboratory = [
  heading("On the sheet former"),
  fraction("formerConsistency", "Consistency where it was added", sheetFormer.consistency, {
    from: 0.0001,
    to: 0.25,
    help: "Of the stock in the laboratory.",
  }),
  fraction("formerFibre", "Fibre that stays", sheetFormer.fibre, {
    help: "One pass: the sheet former has no closed loop.",
  }),
  fraction("formerFines", "Fines that stay", sheetFormer.fines, {
    help: "One pass: the sheet former has no closed loop.",
  }),
  null,
  heading("The fit"),
];

export const starchSheet: SheetPlan = {
  name: "Starch",
  widths: {
    A: 8,
    B: 13,
    C: 15,
    D: 3,
    E: 13,
    F: 18,
    G: 3,
    H: 32,
    I: 12,
    J: 15,
    K: 12,
    L: 12,
    M: 3,
    N: 13,
    O: 15,
    P: 15,
    Q: 15,
  },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Starch" },
    ...down("A2", [
      note(
        "The response of the cationic starch: batch means of the trial in the workbook dose-ladder, read on what was kept on fibre and fines.",
      ),
    ]),
    ...down("A4", [heading("Measured")]),
    {
      kind: "table",
      at: `A${first - 1}`,
      name: "ladder",
      columns: [
        {
          key: "block",
          header: "Block",
          values: ladderBatches.map(({ block }) => block),
          format: "0",
          allow: { whole: { from: 1, to: 1000 } },
          help: "Day or lot of stock.",
        },
        {
          key: "dose",
          header: "Dose",
          unit: "kg/t",
          values: ladderBatches.map(({ dose }) => dose),
          format: "0.0",
          allow: { number: { from: 0, to: 200 } },
          help: "Dry active additive per tonne of oven-dry furnish.",
        },
        {
          key: "index",
          header: "Index",
          unit: "N·m/g",
          values: ladderBatches.map(({ index }) => index),
          format: "0.00",
          allow: { number: { from: 0.1, to: 1000 } },
          help: "Mean tensile index of the sheets of one batch.",
        },
      ],
    },
    {
      kind: "spill",
      at: `E${first}`,
      name: "labKept",
      headers: ["Kept (kg/t)"],
      formula:
        "LET(held,WETEND.PARTITION.EQUILIBRIUM({ladder.dose},{formerConsistency},{furnish.share},{furnish.surface},{sites.cationicCapacity},{sites.cationicHalfLoad}),INDEX(held,0,1)*{formerFibre}+INDEX(held,0,2)*{formerFines})",
      room: { rows: batches, columns: 1 },
      format: "0.00",
    },
    {
      kind: "spill",
      at: `F${first}`,
      name: "daysOut",
      headers: ["Days out (N·m/g)"],
      formula:
        "{ladder.index}-AVERAGEIF({ladder.block},{ladder.block},{ladder.index})+AVERAGE({ladder.index})",
      room: { rows: batches, columns: 1 },
      format: "0.00",
    },
    ...down("H4", laboratory),
    {
      kind: "spill",
      at: "H10",
      name: "starchFit",
      firstRow: "header",
      formula:
        'TAKE(WETEND.STRENGTH.FIT({labKept},{ladder.index},"exponential",,,{ladder.block}),4)',
      room: { rows: 4, columns: 5 },
      format: ["@", "0.00", "0.00", "0.00", "0.00"],
    },
    ...down("H15", [
      result("starchBase", "Blank", "N·m/g", "0.0", "INDEX({starchFit},2,2)"),
      result("starchGain", "Plateau gain", "N·m/g", "0.0", "INDEX({starchFit},3,2)"),
      result("starchScale", "Scale", "kg/t kept", "0.0", "INDEX({starchFit},4,2)"),
    ]),
    ...down("N4", [heading("Curve and band, 95 %")]),
    {
      kind: "spill",
      at: `N${first}`,
      name: "starchDoses",
      headers: ["Kept (kg/t)"],
      formula: `SEQUENCE(${points},1,0,MAX({labKept})/${points - 1})`,
      room: { rows: points, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: `O${first}`,
      name: "starchBand",
      headers: ["Lower (N·m/g)", "Mean (N·m/g)", "Upper (N·m/g)"],
      formula:
        'WETEND.STRENGTH.BAND({starchDoses},{labKept},{ladder.index},"exponential",,0.95,,{ladder.block})',
      room: { rows: points, columns: 3 },
      format: "0.00",
    },
    {
      kind: "chart",
      at: "H19",
      width: 640,
      height: 340,
      chart: "curve",
      title: "Tensile index, by the starch kept on fibre and fines",
      alt: "Batches as points at the starch that was kept on fibre and fines in the sheet, days taken out; the fitted curve through them rising ever more slowly, with dotted lines for the 95 % limits of the mean.",
      x: { title: "Starch kept on fibre and fines (kg/t)", from: 0, format: "0" },
      y: { title: "Tensile index (N·m/g)", from: 28, format: "0" },
      series: [
        { name: "fitted mean", values: "{starchBand[2]}", x: "{starchDoses}" },
        { name: "batches, days taken out", values: "{daysOut}", x: "{labKept}", role: "measured" },
        { name: "lower limit", values: "{starchBand[1]}", x: "{starchDoses}", role: "band" },
        { name: "upper limit", values: "{starchBand[3]}", x: "{starchDoses}", role: "band" },
      ],
    },
  ],
};
