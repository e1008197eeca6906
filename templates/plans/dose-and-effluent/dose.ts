import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { alternatives, effluent, mill, starch } from "../harrow-fen/mill";
import { down, fraction, heading, note, number, result } from "../parts/lines";
import { retentionAt } from "./retention";

const cents = (money: number) => Math.round(100 * money) / 100;

const wishes = [
  heading("What is wanted, and where"),
  number("wanted", "Starch wanted in the sheet", "kg/t", mill.wanted, "0.0", {
    from: 0.1,
    to: 50,
    help: "Dry starch per tonne of oven-dry furnish.",
  }),
  number("paper", "Paper made", "t/d", mill.paper, "0", {
    from: 1,
    to: 5000,
    help: "Paper as made, with its moisture.",
  }),
  fraction("paperMoisture", "Moisture of the paper", mill.paperMoisture, {
    to: 0.2,
    help: "Water in the paper as made: 5 to 8 % is usual (common practice, no source).",
  }),
  fraction("consistency", "Consistency where it is added", mill.consistency, {
    from: 0.0001,
    to: 0.25,
    help: "Type 1 % or 0.01, never 1.",
  }),
  fraction("recycled", "Unretained part that returns", mill.recycled, {
    help: "Share of what passes the wire that comes back to the headbox.",
  }),
  fraction("degraded", "Of that, destroyed on the way", mill.degraded, {
    help: "Starch eaten or cut in the loop no longer bonds, but it is oxygen demand all the same.",
  }),
];

const additive = [
  heading("The additive"),
  note(starch.name),
  fraction("solids", "Dry solids as received", starch.solids, {
    from: 0.01,
    help: "From the delivery papers, or dried at 105 °C.",
  }),
  fraction("solutionStrength", "Strength of the solution", starch.solutionStrength, {
    from: 0.0001,
    to: 0.25,
    help: "Dry active starch in the cooked solution, by mass.",
  }),
  number("solutionDensity", "Density of the solution", "kg/L", starch.solutionDensity, "0.00", {
    from: 0.5,
    to: 2,
    help: "Measured at the temperature of dosing.",
  }),
  number("codFactor", "Chemical oxygen demand", "g/g", starch.codFactor, "0.00", {
    to: 8,
    help: "Measured on your own additive. 1.1 is typical of starch, from memory.",
  }),
  number("bodFactor", "Biochemical oxygen demand", "g/g", starch.bodFactor, "0.00", {
    to: 8,
    help: "Measured on your own additive. 0.65 is typical of starch, from memory.",
  }),
  fraction("nitrogen", "Nitrogen", starch.nitrogen, {
    to: 0.05,
    format: "0.00 %",
    help: "Nitrogen in the dry additive by mass, from its analysis.",
  }),
  number("activePrice", "Price of dry active starch", "money/kg", starch.activePrice, "0.00", {
    to: 100,
    help: "Delivered; from an invoice by WETEND.COST.ACTIVEPRICE.",
  }),
];

const slowerDrainage = cents(
  alternatives.refiningEnergy * alternatives.drainageRise * alternatives.drainageCost,
);

const otherWays = [
  heading("The other ways to the strength"),
  number("increase", "Tensile index gained", "N·m/g", alternatives.increase, "0.0", {
    from: 0.01,
    to: 100,
    help: "Measured on your own sheets at this dose; the workbook strength-cost works it out.",
  }),
  number(
    "refiningEnergy",
    "Refining for that gain",
    "kWh/t net",
    alternatives.refiningEnergy,
    "0",
    {
      to: 1000,
      help: "The no-load power is left out.",
    },
  ),
  number("slowerDrainage", "Slower drainage by it", "money/t", slowerDrainage, "0.00", {
    to: 100,
    help: "Slower running and more steam; 0 where the machine has room.",
  }),
  number("powerPrice", "Price of power", "money/kWh", alternatives.powerPrice, "0.000", {
    to: 10,
    help: "What the next kWh costs the mill.",
  }),
  number("nativePrice", "Price of native starch", "money/kg", alternatives.nativePrice, "0.00", {
    to: 100,
    help: "Per kg of dry native starch.",
  }),
  fraction("nativeRetention", "Overall retention, native starch", alternatives.nativeRetention, {
    from: 0.001,
    help: "10 to 20 % in the wet end (common practice, no source).",
  }),
  number(
    "nativeCodFactor",
    "Oxygen demand, native starch",
    "g/g",
    alternatives.nativeCodFactor,
    "0.00",
    { to: 8, help: "Measured on your own additive. 1.1 is typical of starch, from memory." },
  ),
  number(
    "treatmentPrice",
    "Treatment of what leaves",
    "money/kg COD",
    effluent.treatmentPrice,
    "0.00",
    { to: 100, help: "The charge of the works, or the mill's own cost." },
  ),
];

const setting = [
  heading("What to set"),
  result(
    "dose",
    "Dose to add",
    "kg/t",
    "0.00",
    `WETEND.DOSE.TARGET({wanted},${retentionAt("{step5}")})`,
    { headline: true },
  ),
  result("overallRetention", "Overall retention", "fraction", "0.0 %", retentionAt("{dose}")),
  result("product", "Product as received", "kg/t", "0.00", "WETEND.DOSE.PRODUCT({dose},{solids})"),
  result("production", "Oven-dry production", "t/d", "0.0", "{paper}*(1-{paperMoisture})"),
  result(
    "pump",
    "Dosing pump",
    "L/h",
    "#,##0",
    "WETEND.DOSE.PUMP({dose},{production}/24,{solutionStrength},{solutionDensity})",
    { headline: true },
  ),
  result(
    "fullSites",
    "Dose that would fill every site",
    "kg/t",
    "0.0",
    "WETEND.DOSE.SURFACELIMIT({furnish.share},{furnish.surface},{furnish.capacity})",
  ),
];

const leaving = [
  heading("What leaves with the water"),
  result(
    "lost",
    "Starch that leaves",
    "kg/d",
    "#,##0",
    "WETEND.EFFLUENT.LOSS({dose},{overallRetention},{production})",
  ),
  result(
    "lossCost",
    "What its treatment costs",
    "money/d",
    "#,##0",
    "{lost}*{codFactor}*{treatmentPrice}",
  ),
  result("mostDose", "Largest dose within the permit", "kg/t", "0.0", "MIN({allowances})"),
];

const worth = [
  heading("What a unit of strength costs"),
  result(
    "starchCost",
    "By this starch, loss included",
    "money/t per N·m/g",
    "0.00",
    "WETEND.COST.ADDITIVE({dose},{activePrice},{increase},WETEND.COST.EFFLUENT({dose},{overallRetention},{treatmentPrice},{codFactor}))",
    { headline: true },
  ),
  result(
    "refiningCost",
    "By refining, slower drainage included",
    "money/t per N·m/g",
    "0.00",
    "WETEND.COST.REFINING({refiningEnergy},{powerPrice},{increase},{slowerDrainage})",
  ),
  result(
    "parityPrice",
    "Worth of this starch against native",
    "money/kg",
    "0.00",
    "WETEND.COST.PARITY({nativePrice},{nativeRetention},{overallRetention},{treatmentPrice}*{nativeCodFactor},1,{treatmentPrice}*{codFactor})",
  ),
  note("Equal cost for a kilogram kept in the sheet: not advice to buy.", 3),
  note("How sure that is, and the cheapest mix: workbook strength-cost.", 3),
];

const treatmentPrices = [
  heading("What an aerobic plant needs for it"),
  number("sludgePrice", "Disposal of sludge", "money/kg dry", 0.12, "0.00", {
    to: 100,
    help: "Per kilogram of dry sludge.",
  }),
  number("nitrogenPrice", "Nitrogen as nutrient", "money/kg N", 1.1, "0.00", {
    to: 100,
    help: "Nutrient bought for the plant.",
  }),
  number("phosphorusPrice", "Phosphorus as nutrient", "money/kg P", 2.6, "0.00", {
    to: 100,
    help: "Nutrient bought for the plant.",
  }),
  note("Power as above; oxygen, aeration and sludge at usual yields.", 3),
];

const treatment: Part = {
  kind: "spill",
  at: "E50",
  name: "treatment",
  firstRow: "header",
  formula:
    "WETEND.EFFLUENT.TREATMENT({starchLoads[1,1]},{starchLoads[2,1]},{powerPrice},{sludgePrice},{nitrogenPrice},{phosphorusPrice})",
  room: { rows: 8, columns: 3 },
  format: ["@", "#,##0.0", "#,##0.0"],
};

export const doseSheet: SheetPlan = {
  name: "Dose",
  widths: { A: 38, B: 11, C: 14, D: 3, E: 40, F: 11, G: 19 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Dose" },
    ...down("A2", [note("Type over the shaded cells; the furnish is on the sheet Where it goes.")]),
    ...down("A4", wishes),
    ...down("A12", additive),
    ...down("A22", otherWays),
    ...down("E4", setting),
    ...down("E12", leaving),
    { kind: "rule", on: "{mostDose}", when: { below: "{dose}" }, look: "breach" },
    ...down("E22", worth),
    {
      kind: "chart",
      at: "A32",
      width: 900,
      height: 320,
      chart: "columns",
      title: "Where the dose goes, and what stays",
      alt: "Columns for fibre, fines, filler and the dissolved part: starch held in the stock, and the part of it that stays in the sheet.",
      x: { title: "Where it is" },
      y: { title: "Starch (kg/t)", from: 0, format: "0" },
      series: [
        { name: "held in the stock", values: "{held}", x: "{places}" },
        { name: "kept in the sheet", values: "{kept}", x: "{places}" },
      ],
    },
    ...down("A49", treatmentPrices),
    treatment,
  ],
};
