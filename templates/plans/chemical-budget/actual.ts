import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";
import { computedNote, down, result } from "../parts/lines";
import { byMonth, MONTH } from "./by-month";
import { actualToDate, planToDate } from "./to-date";

const actual: Part = {
  kind: "table",
  at: "A5",
  name: "actual",
  columns: [
    { key: "month", header: "Month", values: year.months, format: MONTH },
    {
      key: "output",
      header: "Dry output",
      unit: "t",
      values: year.actual.output,
      format: "#,##0",
      allow: { number: { from: 0, to: 1_000_000 } },
      help: "Oven-dry furnish made in the month; 0 where the machine stood still.",
    },
    {
      key: "bought",
      header: "Additive used",
      unit: "kg",
      values: year.actual.bought,
      format: "#,##0",
      allow: { number: { from: 0, to: 100_000_000 } },
      help: "Dry active additive used, bought in the month or not: invoices, less what was added to the stock, or more by what was taken from it.",
    },
    {
      key: "price",
      header: "Price",
      unit: "money/kg",
      values: year.actual.price,
      format: "0.000",
      allow: { number: { from: 0.0001, to: 1000 } },
      help: "Per kilogram of dry active additive, as paid.",
    },
    {
      key: "retention",
      header: "Overall retention",
      unit: "fraction",
      values: year.actual.retention,
      format: "0.0 %",
      allow: { number: { from: 0.001, to: 1 } },
      help: "Share of the dose that stayed in the sheet, from the log of the month.",
    },
  ],
};

/** What a month needs: output and use, and where something was used a price and a retention. */
const blankCells =
  "SUM((SEQUENCE(ROWS({actual.output}))<={monthsMade})*(2-ISNUMBER({actual.output})-ISNUMBER({actual.bought})+({actual.bought}>0)*(2-ISNUMBER({actual.price})-ISNUMBER({actual.retention}))))";

/** As COST.BUDGET answers, but of what was used: a month of standstill has its cost, too. */
const spent = `LET(month,${actualToDate.month},output,${actualToDate.output},used,${actualToDate.bought},cost,used*${actualToDate.price},total,SUM(cost),VSTACK(HSTACK("",SEQUENCE(1,5)),HSTACK(month,output,used,cost,IF(output=0,"",cost/output),SCAN(0,cost,LAMBDA(sum,one,sum+one))),HSTACK("Total",SUM(output),SUM(used),total,total/SUM(output),total)))`;

const room = { rows: year.months.length, columns: 1 };

export const actualSheet: SheetPlan = {
  name: "Actual",
  widths: {
    A: 20,
    B: 13,
    C: 12,
    D: 13,
    E: 17,
    F: 2,
    G: 14,
    H: 12,
    I: 7,
    J: 12,
    K: 13,
    L: 14,
    M: 12,
    N: 14,
  },
  freeze: "B6",
  print: { landscape: true, pagesTall: 1 },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Actual" },
    ...down("A2", [
      computedNote(
        '{additive}&": leave the months to come blank. September is the month of the log in the workbook dose-and-effluent, with one day overdosed."',
      ),
      result("monthsMade", "Months so far", "", "0", "IFERROR(MATCH(9E+307,{actual.output}),0)"),
      result("leftBlank", "Blank cells in them", "", "0", blankCells),
    ]),
    { kind: "rule", on: "{leftBlank}", when: { above: 0 }, look: "breach" },
    actual,
    {
      kind: "spill",
      at: "G6",
      name: "dosed",
      headers: ["Dosed (kg/t)"],
      formula: `IF(${actualToDate.output}=0,0,${actualToDate.bought}*(1-{loss})/${actualToDate.output})`,
      room,
      format: "0.00",
    },
    {
      kind: "spill",
      at: "H6",
      name: "overPlan",
      headers: ["Above plan"],
      formula: `IF((${actualToDate.output}=0)+(${planToDate.dose}=0),"",ROUND({dosed}/${planToDate.dose}-1,6))`,
      room,
      format: "+0.0 %;-0.0 %;0.0 %",
    },
    { kind: "rule", on: "{overPlan}", when: { above: 0.03 }, look: "warning" },
    ...byMonth({
      at: "J6",
      name: "spent",
      headers: [
        "Output (t)",
        "Additive (kg)",
        "Cost (money)",
        "Cost (money/t)",
        "Cumulative (money)",
      ],
      format: ["#,##0", "#,##0", "#,##0", "0.00", "#,##0"],
      formula: spent,
    }),
    {
      kind: "chart",
      at: "A20",
      width: 900,
      height: 320,
      chart: "columns",
      title: "Cost of the additive, against the budget",
      alt: "A column a month: what the additive cost, with the budget of the month as a dashed line. The columns stand above the line from March to September but for a few, most of all in May and September.",
      x: { title: "Month" },
      y: { title: "Cost (money)", from: 0, format: "#,##0" },
      series: [
        { name: "actual", values: "{spent[3]}", x: "{actual.month}" },
        { name: "budget", values: "{budget[3]}", x: "{plan.month}", role: "limit" },
      ],
    },
  ],
};
