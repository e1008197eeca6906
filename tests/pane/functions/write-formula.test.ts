import { describe, expect, inject, test } from "vitest";
import type { FunctionReference } from "../../../src/help/reference";
import { type Typed, writeFormula } from "../../../src/pane/functions/write-formula";

const { reference } = inject("functions");
const write = (id: string, typed: Typed) =>
  writeFormula("WETEND", reference.find((one) => one.id === id) as FunctionReference, typed);

describe("a complete formula", () => {
  test.each<[string, string, Typed, string]>([
    [
      "takes cells, ranges, values and sums as they are typed",
      "DOSE.PUMP",
      { dose: "Log!B4:B33", throughput: "9.3+0.2", strength: " 3% ", density: "dens" },
      "=WETEND.DOSE.PUMP(Log!B4:B33,9.3+0.2,3%,dens)",
    ],
    [
      "leaves optional arguments out at its end",
      "DOSE.PUMP",
      { dose: "8", throughput: "C2", strength: "0.03" },
      "=WETEND.DOSE.PUMP(8,C2,0.03)",
    ],
    [
      "keeps the place of one left out before others",
      "RETENTION.ADDITIVE",
      { amounts: "{1,2}", retentions: "B2:C2", carried: "0.1" },
      "=WETEND.RETENTION.ADDITIVE({1,2},B2:C2,,0.1)",
    ],
    [
      "puts a choice in quotes",
      "DOSE.CONVERT",
      { value: "16", from: "lb/short ton", to: "kg/t" },
      '=WETEND.DOSE.CONVERT(16,"lb/short ton","kg/t")',
    ],
    [
      "puts a text in quotes",
      "EFFLUENT.OXYGEN",
      { formula: "C6H10O5" },
      '=WETEND.EFFLUENT.OXYGEN("C6H10O5")',
    ],
    [
      "takes a cell for a text where a cell is given",
      "EFFLUENT.OXYGEN",
      { formula: "Dose!$B$2" },
      "=WETEND.EFFLUENT.OXYGEN(Dose!$B$2)",
    ],
    [
      "takes a formula for a text where one is given",
      "EFFLUENT.OXYGEN",
      { formula: '=UPPER("c")' },
      '=WETEND.EFFLUENT.OXYGEN(UPPER("c"))',
    ],
    [
      "leaves structured references alone",
      "DOSE.TARGET",
      { retained: "Log[retained, kg/t]", overallRetention: "INDEX(A1:B2,1,2)" },
      "=WETEND.DOSE.TARGET(Log[retained, kg/t],INDEX(A1:B2,1,2))",
    ],
  ])("%s", (_, id, typed, formula) => {
    expect(write(id, typed)).toEqual({ formula });
  });
});

describe("what cannot be a formula is said by argument", () => {
  test.each([
    ["", "Give a cell, a range or a value [kg/t]."],
    ["0,82", "Write 0.82: in a formula a comma parts the arguments."],
    ["SUM(A1:A3", "A bracket ( is left open or closes nothing."],
    ["A1)", "A bracket ) is left open or closes nothing."],
    ['"text', 'A quote " is left open or closes nothing.'],
    ["A1,A2", "Give one range or one value. Several values go in braces: {1,2,3}."],
    ["1;2", "Give one range or one value. Several values go in braces: {1,2,3}."],
  ])("%s", (retained, fault) => {
    expect(write("DOSE.TARGET", { retained, overallRetention: "0.8" })).toEqual({
      faults: { retained: fault },
    });
  });
});
