import type { SheetPlan } from "../../../src/workbook/plan";
import { refiningBatches } from "../harrow-fen/ladder";
import { alternatives } from "../harrow-fen/mill";
import { down, heading, note, number, result } from "../parts/lines";

const points = 21;
const first = 6;
const data = "{refined.energy},{refined.index}";

const inputs = [
  heading("On the machine"),
  number("energy", "Refining considered", "kWh/t net", alternatives.refiningEnergy, "0", {
    from: 0.1,
    to: 1000,
    help: "On top of today's; the no-load power is left out.",
  }),
  number("mostEnergy", "Highest tried", "kWh/t net", 90, "0", {
    from: 0.1,
    to: 1000,
    help: "No refining above this is proposed.",
  }),
  number("powerPrice", "Price of power", "money/kWh", alternatives.powerPrice, "0.000", {
    from: 0.0001,
    to: 10,
    help: "What the next kWh costs the mill.",
  }),
  number(
    "drainageCost",
    "Cost of slower drainage",
    "money/t per °SR",
    alternatives.drainageCost,
    "0.00",
    {
      to: 100,
      help: "Slower running and more steam; 0 where the machine has room.",
    },
  ),
  null,
  heading("The fit"),
];

export const refiningSheet: SheetPlan = {
  name: "Refining",
  widths: {
    A: 16,
    B: 15,
    C: 16,
    D: 3,
    E: 32,
    F: 12,
    G: 15,
    H: 12,
    I: 12,
    J: 3,
    K: 16,
    L: 15,
    M: 15,
    N: 15,
  },
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Refining" },
    ...down("A2", [
      note(
        "The response of the same furnish to refining, in the laboratory. Invented, a batch a row.",
      ),
    ]),
    ...down("A4", [heading("Measured")]),
    {
      kind: "table",
      at: `A${first - 1}`,
      name: "refined",
      columns: [
        {
          key: "energy",
          header: "Energy",
          unit: "kWh/t",
          values: refiningBatches.map(({ energy }) => energy),
          format: "0",
          allow: { number: { from: 0, to: 1000 } },
          help: "Net energy, the no-load power left out.",
        },
        {
          key: "index",
          header: "Index",
          unit: "N·m/g",
          values: refiningBatches.map(({ index }) => index),
          format: "0.0",
          allow: { number: { from: 0.1, to: 1000 } },
          help: "Mean tensile index of the sheets of one batch.",
        },
        {
          key: "drainage",
          header: "Drainage",
          unit: "°SR",
          values: refiningBatches.map(({ drainage }) => drainage),
          format: "0",
          allow: { number: { from: 10, to: 90 } },
          help: "ISO 5267-1, valid from 10 to 90.",
        },
      ],
    },
    ...down("E4", inputs),
    {
      kind: "spill",
      at: "E11",
      name: "refiningFit",
      firstRow: "header",
      formula: `TAKE(WETEND.STRENGTH.FIT(${data},"exponential"),4)`,
      room: { rows: 4, columns: 5 },
      format: ["@", "0.00", "0.00", "0.00", "0.00"],
    },
    ...down("E16", [
      result("refiningGain", "Plateau gain", "N·m/g", "0.0", "INDEX({refiningFit},3,2)"),
      result("refiningScale", "Scale", "kWh/t", "0", "INDEX({refiningFit},4,2)"),
      result(
        "drainageRise",
        "Drainage, rise",
        "°SR per kWh/t",
        "0.000",
        "SLOPE({refined.drainage},{refined.energy})",
      ),
      result(
        "fullPowerPrice",
        "Power and slower drainage",
        "money/kWh",
        "0.000",
        "{powerPrice}+{drainageRise}*{drainageCost}",
      ),
    ]),
    ...down("K4", [heading("Curve and band, 95 %")]),
    {
      kind: "spill",
      at: `K${first}`,
      name: "energies",
      headers: ["Energy (kWh/t)"],
      formula: `SEQUENCE(${points},1,0,MAX({refined.energy})/${points - 1})`,
      room: { rows: points, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: `L${first}`,
      name: "refiningBand",
      headers: ["Lower (N·m/g)", "Mean (N·m/g)", "Upper (N·m/g)"],
      formula: `WETEND.STRENGTH.BAND({energies},${data})`,
      room: { rows: points, columns: 3 },
      format: "0.00",
    },
    {
      kind: "chart",
      at: "E21",
      width: 640,
      height: 340,
      chart: "curve",
      title: "Tensile index, by refining",
      alt: "Batches as points at the net energy that they were refined with; the fitted curve through them rising ever more slowly, with dotted lines for the 95 % limits of the mean.",
      x: { title: "Net refining energy (kWh/t)", from: 0, format: "0" },
      y: { title: "Tensile index (N·m/g)", from: 28, format: "0" },
      series: [
        { name: "fitted mean", values: "{refiningBand[2]}", x: "{energies}" },
        { name: "batches", values: "{refined.index}", x: "{refined.energy}", role: "measured" },
        { name: "lower limit", values: "{refiningBand[1]}", x: "{energies}", role: "band" },
        { name: "upper limit", values: "{refiningBand[3]}", x: "{energies}", role: "band" },
      ],
    },
  ],
};
