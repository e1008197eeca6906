import type { SheetPlan } from "../../../src/workbook/plan";
import { body, caution, down, note } from "../parts/lines";

/** As many sheets as the page has formats for; more are listed, too. */
const sheetsOfTrial = 400;
/** Points: room to write by hand. */
const handHeight = 20;

const toWriteOn = (columns: number) =>
  `IF({bench[4]}>0,${Array.from({ length: columns }, () => '"______________"').join("&")},"")`;

export const benchSheet: SheetPlan = {
  name: "Bench sheet",
  widths: { A: 8, B: 7, C: 14, D: 8, E: 13, F: 16, G: 18, H: 20, I: 34 },
  print: { landscape: true, repeatRows: "10:10" },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Bench sheet" },
    ...down("A2", [
      note("To print for the laboratory: a row a sheet, in the order in which they are made.", 9),
      note(
        "Stock and solution stand at the first sheet of a batch and are for the whole batch. Write down every sheet; where one is lost or odd, write why.",
        9,
      ),
      note(
        "Afterwards: copy block, run, dose and sheet, paste only the values into the table on Results, and type what was measured beside them.",
        9,
      ),
      caution(
        "Cooked starch scalds and sticks: goggles, gloves, no sealed vessel on a hot plate. Its dust can explode; wipe spills at once, they are slippery. Press and guillotine catch fingers.",
        9,
      ),
      caution(
        "The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work.",
        9,
      ),
      body(
        "Date: ______________   Made by: ______________________   Stock: ______________________",
      ),
    ]),
    {
      kind: "spill",
      at: "A11",
      name: "bench",
      headers: ["Block", "Run", "Dose (kg/t)", "Sheet"],
      formula:
        "LET(runs,DROP(WETEND.TRIAL.ORDER({doses},{blocks},{seed}),1),line,SEQUENCE(ROWS(runs)*{sheets},1,0),HSTACK(INDEX(runs,1+INT(line/{sheets}),{1,2,3}),1+MOD(line,{sheets})))",
      room: { rows: sheetsOfTrial, columns: 4 },
      rowHeight: handHeight,
      format: ["0", "0", "0.0", "0"],
    },
    {
      kind: "spill",
      at: "E11",
      name: "benchVolumes",
      headers: ["Stock (mL)", "Solution (mL)"],
      formula:
        'IF({bench[4]}=1,CHOOSECOLS(WETEND.TRIAL.HANDSHEET({bench[3]},{stockConsistency},{solutionStrength},{grammage},{area},{sheets}),2,4),"")',
      room: { rows: sheetsOfTrial, columns: 2 },
      format: ["0", "0.00"],
    },
    {
      kind: "spill",
      at: "G11",
      name: "benchTensile",
      headers: ["Tensile (kN/m)"],
      formula: toWriteOn(1),
      room: { rows: sheetsOfTrial, columns: 1 },
      format: "@",
    },
    {
      kind: "spill",
      at: "H11",
      name: "benchGrammage",
      headers: ["Grammage (g/m²)"],
      formula: toWriteOn(1),
      room: { rows: sheetsOfTrial, columns: 1 },
      format: "@",
    },
    {
      kind: "spill",
      at: "I11",
      name: "benchRemark",
      headers: ["Remark"],
      formula: toWriteOn(2),
      room: { rows: sheetsOfTrial, columns: 1 },
      format: "@",
    },
  ],
};
