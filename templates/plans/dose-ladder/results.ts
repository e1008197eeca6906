import type { SheetPlan } from "../../../src/workbook/plan";
import { ladderSheets, type SheetOfTrial } from "../harrow-fen/ladder";
import { down, fraction, heading, note, result } from "../parts/lines";

/** As many as the plan can ask for, the blank among them. */
const levels = [1, 2, 3, 4, 5, 6, 7, 8];

const typed = (key: keyof SheetOfTrial) => ladderSheets.map((sheet) => sheet[key]);

export const resultsSheet: SheetPlan = {
  name: "Results",
  widths: { A: 9, B: 9, C: 14, D: 9, E: 17, F: 20, G: 17, H: 14, I: 3, J: 46, K: 10, L: 12 },
  freeze: "A5",
  print: { landscape: true, repeatRows: "4:4" },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Results" },
    ...down("A2", [
      note(
        "One row a sheet, in the order in which they were made. Invented, with a spread as laboratories have it.",
      ),
      note(
        "A sheet that was lost or torn: clear its tensile, or write why in its place. It is left out, and counted as missing.",
      ),
    ]),
    {
      kind: "table",
      at: "A4",
      name: "results",
      columns: [
        {
          key: "block",
          header: "Block",
          values: typed("block"),
          format: "0",
          allow: { whole: { from: 1, to: 1000 } },
          help: "Day or lot of stock, as in the run order.",
        },
        {
          key: "run",
          header: "Run",
          values: typed("run"),
          format: "0",
          allow: { whole: { from: 1, to: 100_000 } },
          help: "The batch, as numbered in the run order.",
        },
        {
          key: "dose",
          header: "Dose",
          unit: "kg/t",
          values: typed("dose"),
          format: "0.0",
          allow: { number: { from: 0, to: 200 } },
          help: "What was added in truth, not what was planned.",
        },
        {
          key: "sheet",
          header: "Sheet",
          values: typed("sheet"),
          format: "0",
          allow: { whole: { from: 1, to: 100 } },
          help: "Counted within the batch.",
        },
        {
          key: "tensile",
          header: "Tensile",
          unit: "kN/m",
          values: typed("tensile"),
          format: "0.000",
          allow: { numberOrText: { from: 0.001, to: 100 } },
          help: "Mean of the strips of this sheet (ISO 1924-2). Where there is none: why.",
        },
        {
          key: "grammage",
          header: "Grammage",
          unit: "g/m²",
          values: typed("grammage"),
          format: "0.0",
          allow: { number: { from: 10, to: 1000 } },
          help: "Of this sheet, conditioned like the strips.",
        },
        {
          key: "index",
          header: "Index",
          unit: "N·m/g",
          formula: 'IF(ISNUMBER({@tensile}),WETEND.STRENGTH.INDEX({@tensile},{@grammage}),"")',
          format: "0.00",
        },
        {
          key: "off",
          header: "Off its dose",
          formula:
            'IFERROR(ROUND({@index}/INDEX({medians[2]},MATCH({@dose},{medians[1]},0))-1,3),"")',
          format: "+0.0 %;-0.0 %;0.0 %",
        },
      ],
    },
    ...down("J4", [
      result("entered", "Sheets entered", "", "0", "COUNT({results.index})"),
      result("missing", "Sheets still missing", "", "0", "{allSheets}-{entered}"),
      result(
        "offPlan",
        "Sheets with another dose than planned",
        "",
        "0",
        "SUM(--(ABS(XLOOKUP({results.run},{order[2]},{order[3]},-1)-{results.dose})>0.005))",
      ),
      fraction("farOff", "A sheet is far off its dose beyond", 0.1, {
        format: "0 %",
        from: 0.01,
        help: "From the median of its dose. Several times the spread of your sheets.",
      }),
      result(
        "farOffSheets",
        "Sheets far off: look them up in the notebook",
        "",
        "0",
        "SUM(--(ABS(IFERROR(1*{results.off},0))>{farOff}))",
      ),
      note("A slip of the pen is corrected. A sheet that is merely odd stays."),
      heading("Median index of each dose (N·m/g)"),
    ]),
    {
      kind: "block",
      at: "J12",
      name: "medians",
      look: "result",
      format: ["0.0", "0.00"],
      rows: levels.map((level) => [
        `=IFERROR(INDEX({doses},${level}),"")`,
        `=IFERROR(MEDIAN(IF(ISNUMBER({results.index})*({results.dose}=INDEX({doses},${level})),{results.index})),"")`,
      ]),
    },
    {
      kind: "rule",
      on: "{results.off}",
      when: { formula: "AND(ISNUMBER({cell}),ABS({cell})>{farOff})" },
      look: "warning",
    },
    { kind: "rule", on: "{farOffSheets}", when: { above: 0 }, look: "warning" },
    { kind: "rule", on: "{missing}", when: { above: 0 }, look: "warning" },
    { kind: "rule", on: "{offPlan}", when: { above: 0 }, look: "warning" },
  ],
};
