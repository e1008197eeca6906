import type { SheetPlan } from "../../../src/workbook/plan";
import { starch } from "../harrow-fen/mill";
import { caution, down, fraction, heading, note, number, result } from "../parts/lines";

const solution = [
  heading("The starch solution"),
  note(`${starch.name}: cooked, then diluted`),
  fraction("solids", "Dry solids as received", starch.solids, {
    from: 0.01,
    help: "From the delivery papers, or dried at 105 °C.",
  }),
  number("cooked", "Amount to cook", "L", 0.5, "0.0", {
    from: 0.01,
    to: 100,
    help: "Cook fresh for each block: cooked starch does not keep.",
  }),
  fraction("cookedStrength", "Strength as cooked", 0.02, {
    from: 0.0001,
    to: 0.2,
    help: "Dry active starch by mass. 1 to 3 % still pours (common practice, no source).",
  }),
  number("volume", "Solution to make", "L", 1, "0.0", {
    from: 0.01,
    to: 100,
    help: "For one block, with what is lost in pipettes and beakers.",
  }),
  fraction("solutionStrength", "Strength of the solution", 0.002, {
    format: "0.00 %",
    from: 0.0001,
    to: 0.2,
    help: "Dry active starch by mass. So weak that the volumes below can be measured: 1 mL and more.",
  }),
  number("solutionDensity", "Density of the solution", "kg/L", 1, "0.00", {
    from: 0.5,
    to: 2,
    help: "1 where it is thin.",
  }),
];

const cooking = "WETEND.TRIAL.MAKEDOWN({cooked},{cookedStrength},{solids})";
const dilution =
  "WETEND.TRIAL.MAKEDOWN({volume},{solutionStrength},{cookedStrength},1,{solutionDensity})";

const recipe = [
  heading("Weigh in"),
  result("starchIn", "Starch as received", "g", "0.00", `INDEX(${cooking},1,2)`),
  result("waterIn", "Cold water to cook it in", "g", "0.0", `INDEX(${cooking},2,2)`),
  result("cookedIn", "Cooked starch to dilute", "g", "0.0", `INDEX(${dilution},1,2)`),
  result("dilutionIn", "Water to dilute it with", "g", "0.0", `INDEX(${dilution},2,2)`),
  note("After cooking make up by weight what has boiled off."),
];

const stock = [
  heading("The stock and the sheets"),
  fraction("stockConsistency", "Consistency of the stock", 0.01, {
    from: 0.0001,
    to: 0.15,
    help: "Where the starch is added; as on the machine.",
  }),
  number("grammage", "Grammage of the sheet", "g/m²", 60, "0", {
    from: 10,
    to: 500,
    help: "Oven-dry. 60 in TAPPI T 205 and ISO 5269-1.",
  }),
  number("area", "Area of the sheet", "m²", 0.02, "0.0000", {
    from: 0.001,
    to: 1,
    help: "Of your sheet former: 0.02 m² is usual (from memory).",
  }),
];

export const makeUpSheet: SheetPlan = {
  name: "Make-up",
  widths: { A: 34, B: 13, C: 14, D: 15, E: 17 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Make-up" },
    ...down("A3", solution),
    ...down("A12", recipe),
    ...down("A19", stock),
    ...down("A24", [heading("One batch of every level")]),
    {
      kind: "spill",
      at: "A26",
      name: "levelDoses",
      headers: ["Dose (kg/t)"],
      formula: "{doses}",
      room: { rows: 8, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: "B26",
      name: "volumes",
      headers: ["Fibre (g)", "Stock (mL)", "Starch (mg)", "Solution (mL)"],
      formula:
        "WETEND.TRIAL.HANDSHEET({doses},{stockConsistency},{solutionStrength},{grammage},{area},{sheets})",
      room: { rows: 8, columns: 4 },
      format: ["0.00", "0", "0.0", "0.00"],
    },
    ...down("A35", [
      result("blockSolution", "Solution for a block", "mL", "0.0", "SUM({volumes[4]})"),
      result("blockStock", "Stock for a block", "L", "0.00", "SUM({volumes[2]})/1000"),
    ]),
    {
      kind: "rule",
      on: "{volumes[4]}",
      when: { formula: "AND(ISNUMBER({cell}),{cell}>0,{cell}<1)" },
      look: "warning",
    },
    {
      kind: "rule",
      on: "{blockSolution}",
      when: { above: "1000*{volume}" },
      look: "breach",
    },
    { kind: "rule", on: "{cookedIn}", when: { above: "1000*{cooked}" }, look: "breach" },
    ...down("A38", [
      heading("Steps at the bench"),
      note(
        "1  For each block take one lot of stock. Stir it, check its consistency, keep it stirred.",
        5,
      ),
      note("2  Make the batches in the run order, never by rising dose.", 5),
      note(
        "3  Add the solution to the stock of the whole batch, stir for as long as it takes to the wire on the machine, then form all its sheets.",
        5,
      ),
      note(
        "4  Cook and dilute afresh for each block. Press, dry and condition all sheets alike.",
        5,
      ),
      note("5  Write down every sheet. Leave none out because it looks odd: say what was odd.", 5),
      heading("Caution"),
      caution(
        "Starch dust can explode: add powder slowly to stirred cold water, keep dust and flames away. Cooked starch is hot, sticks and scalds: goggles, gloves, no sealed vessels on a hot plate. Wipe spills at once: they are slippery.",
        5,
      ),
      caution(
        "The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work.",
        5,
      ),
    ]),
  ],
};
