import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { furnishArguments } from "../harrow-fen/furnish";
import { september } from "../harrow-fen/september";
import { day, down, note } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";

const headerRow = 4;

/** A column of one formula over all days. */
const daily = spillColumns(headerRow + 1, september.days.length);

const typed: Part = {
  kind: "table",
  at: `A${headerRow}`,
  name: "log",
  columns: [
    {
      key: "day",
      header: "Day",
      values: september.days,
      format: "yyyy-mm-dd",
      allow: day,
      help: "One row a day.",
    },
    {
      key: "paper",
      header: "Paper",
      unit: "t/d",
      values: september.paper,
      format: "0",
      allow: { number: { from: 1, to: 5000 } },
      help: "Paper as made, with its moisture.",
    },
    {
      key: "consistency",
      header: "Stock",
      unit: "consistency",
      values: september.consistency,
      format: "0.00 %",
      allow: { number: { from: 0.0001, to: 0.25 } },
      help: "Consistency where the starch is added: 1 % or 0.01, never 1.",
    },
    {
      key: "flow",
      header: "Pump",
      unit: "L/h",
      values: september.flow,
      format: "#,##0",
      allow: { number: { from: 0, to: 1_000_000 } },
      help: "Mean flow of starch solution over the day.",
    },
    {
      key: "strength",
      header: "Solution",
      unit: "dry starch",
      values: september.strength,
      format: "0.00 %",
      allow: { number: { from: 0.0001, to: 0.25 } },
      help: "Dry active starch in the solution, by mass.",
    },
    {
      key: "effluent",
      header: "Effluent",
      unit: "m³/d",
      values: september.effluent,
      format: "#,##0",
      allow: { number: { from: 1, to: 1_000_000 } },
      help: "Flow at the outfall over the day.",
    },
    {
      key: "rest",
      header: "All else",
      unit: "kg/d COD",
      values: september.background,
      format: "#,##0",
      allow: { number: { from: 0, to: 1_000_000 } },
      help: "Raw load of the day less what the starch brings.",
    },
  ],
};

const lossOf = (quantity: string, factor: string) =>
  `WETEND.EFFLUENT.${quantity}({dosed},{retained},{dry},{${factor}})`;

const computed: readonly Part[] = [
  daily("I", "dry", "Oven-dry (t/d)", "0.0", "{log.paper}*(1-{paperMoisture})"),
  daily(
    "J",
    "dosed",
    "Dosed (kg/t)",
    "0.00",
    "{log.flow}*24*{solutionDensity}*{log.strength}/{dry}",
  ),
  daily(
    "K",
    "retained",
    "Overall retention",
    "0.0 %",
    `WETEND.RETENTION.ADDITIVE(WETEND.PARTITION.EQUILIBRIUM({dosed},{log.consistency},${furnishArguments}),{loops})`,
  ),
  daily("L", "inSheet", "In the sheet (kg/t)", "0.00", "{dosed}*{retained}"),
  { kind: "rule", on: "{inSheet}", when: { below: "0.95*{wanted}" }, look: "warning" },
  daily("M", "starchCod", "Starch (kg/d COD)", "#,##0", lossOf("COD", "codFactor")),
  daily("N", "starchBod", "Starch (kg/d BOD)", "#,##0", lossOf("BOD", "bodFactor")),
  daily("O", "starchNitrogen", "Starch (kg/d N)", "0.00", lossOf("NITROGEN", "nitrogen")),
  daily("P", "allCod", "All (kg/d COD)", "#,##0", "{log.rest}+{starchCod}"),
  { kind: "rule", on: "{allCod}", when: { above: "{codLimit}" }, look: "breach" },
  { kind: "rule", on: "{allCod}", when: { above: "(1-{margin})*{codLimit}" }, look: "warning" },
  daily("Q", "permitted", "Limit (kg/d COD)", "#,##0", "{codLimit}+0*{dry}"),
  daily(
    "R",
    "inEffluent",
    "COD (mg/L)",
    "#,##0",
    "WETEND.EFFLUENT.CONCENTRATION({allCod},{log.effluent})",
  ),
  daily(
    "S",
    "allowed",
    "Largest dose (kg/t)",
    "0.0",
    "WETEND.EFFLUENT.ALLOWANCE({codLimit},{log.rest},{retained},{dry},{codFactor},{removal},{margin})",
  ),
  { kind: "rule", on: "{allowed}", when: { formula: "{cell}<$J5" }, look: "warning" },
  { kind: "rule", on: "{allowed}", when: "error", look: "warning" },
];

export const logSheet: SheetPlan = {
  name: "Log",
  widths: {
    A: 12,
    B: 9,
    C: 15,
    D: 12,
    E: 11,
    F: 10,
    G: 11,
    H: 2,
    I: 10,
    J: 9,
    K: 11,
    L: 10,
    M: 10,
    N: 10,
    O: 10,
    P: 10,
    Q: 10,
    R: 11,
    S: 13,
  },
  freeze: `B${headerRow + 1}`,
  print: { landscape: true, repeatRows: `${headerRow}:${headerRow}` },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Log" },
    ...down("A2", [
      note("One row a day in the shaded table; the columns to its right are one formula each."),
    ]),
    typed,
    ...computed,
  ],
};
