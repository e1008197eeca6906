import type { SheetPlan } from "../../../src/workbook/plan";
import { starch } from "../harrow-fen/mill";
import { caution, down, fraction, heading, note, number, result } from "../parts/lines";

const solution = [
  heading("The starch solution"),
  note(`${starch.name}, cooked and diluted`),
  number("volume", "Volume to make", "L", 1, "0.0", {
    from: 0.01,
    to: 100,
    help: "For one block; cooked starch does not keep.",
  }),
  fraction("solutionStrength", "Strength", 0.002, {
    format: "0.00 %",
    from: 0.0001,
    to: 0.2,
    help: "Dry active starch by mass. So weak that the volumes below can be measured: 1 mL and more.",
  }),
  fraction("solids", "Dry solids as received", starch.solids, {
    from: 0.01,
    help: "From the delivery papers, or dried at 105 °C.",
  }),
  number("solutionDensity", "Density", "kg/L", 1, "0.00", {
    from: 0.5,
    to: 2,
    help: "Of the solution; 1 where it is thin.",
  }),
];

const stock = [
  heading("The stock and the sheets"),
  fraction("stockConsistency", "Consistency of the stock", 0.01, {
    from: 0.0001,
    to: 0.15,
    help: "Where the starch is added: as on the machine.",
  }),
  number("grammage", "Grammage of the sheet", "g/m²", 60, "0", {
    from: 10,
    to: 500,
    help: "Oven-dry. 60 in TAPPI T 205 and ISO 5269-1.",
  }),
  number("area", "Area of the sheet", "m²", 0.02, "0.0000", {
    from: 0.001,
    to: 1,
    help: "Of your sheet former; 0.02 m² is usual (from memory).",
  }),
];

export const makeUpSheet: SheetPlan = {
  name: "Make-up",
  widths: { A: 34, B: 13, C: 13, D: 13, E: 14 },
  print: { pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Make-up" },
    ...down("A3", solution),
    {
      kind: "spill",
      at: "D4",
      name: "recipe",
      headers: ["Weigh in", ""],
      formula: "WETEND.TRIAL.MAKEDOWN({volume},{solutionStrength},{solids},1,{solutionDensity})",
      room: { rows: 2, columns: 2 },
      format: ["@", "0.0"],
    },
    ...down("A11", stock),
    ...down("A16", [heading("One batch of every level")]),
    {
      kind: "spill",
      at: "A18",
      name: "levelDoses",
      headers: ["Dose (kg/t)"],
      formula: "{doses}",
      room: { rows: 8, columns: 1 },
      format: "0.0",
    },
    {
      kind: "spill",
      at: "B18",
      name: "volumes",
      headers: ["Fibre (g)", "Stock (mL)", "Starch (mg)", "Solution (mL)"],
      formula:
        "WETEND.TRIAL.HANDSHEET({doses},{stockConsistency},{solutionStrength},{grammage},{area},{sheets})",
      room: { rows: 8, columns: 4 },
      format: ["0.00", "0", "0.0", "0.00"],
    },
    ...down("A27", [
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
    ...down("A30", [
      heading("Steps at the bench"),
      note("1  Take one lot of stock a block. Stir it, check its consistency, keep it stirred.", 5),
      note("2  Make the batches in the run order, never by rising dose.", 5),
      note(
        "3  Add the solution to the whole batch, stir for the time to the wire, form all its sheets.",
        5,
      ),
      note("4  Use fresh solution for each block. Press, dry and condition all sheets alike.", 5),
      note("5  Write down every sheet. Leave none out because it looks odd: say why it did.", 5),
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
