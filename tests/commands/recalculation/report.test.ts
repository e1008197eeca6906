import { describe, expect, test } from "vitest";
import type { Recalculated } from "../../../src/commands/recalculation/recalculate";
import { exitCodeOf, reportOf } from "../../../src/commands/recalculation/report";

const nothing: Recalculated = {
  book: { sheets: [], tables: [], styles: {}, definedNames: [] },
  ours: 3,
  failures: [],
  kept: [],
  cramped: [],
};
const failure = {
  sheet: "Log",
  address: "E4",
  formula: "WETEND.DOSE.TARGET(6.5,1.4)",
  error: "#VALUE!",
  message: "overallRetention is 1.4.",
};
const kept = {
  sheet: "Log",
  address: "B1",
  formula: "A1*2",
  saved: "5",
  computed: { error: "#NAME?" },
};

describe("the report of a recalculation", () => {
  test("says in one line that all is well", () => {
    expect(reportOf(nothing, 1, [])).toEqual(["3 Dosewright formulas computed, 1 cell changed."]);
    expect(reportOf({ ...nothing, ours: 0 }, 0, [])).toEqual([
      "The workbook holds no Dosewright formula.",
    ]);
  });

  test("names every failed cell with its message, every kept one with both values, and what went stale", () => {
    const cramped = [{ sheet: "Log", address: "C4" }];
    const report = { ...nothing, failures: [failure], kept: [kept], cramped };
    expect(reportOf(report, 2, ["Pivot tables…"])).toEqual([
      "3 Dosewright formulas computed, 2 cells changed.",
      "1 cell failed:",
      "  Log!E4  #VALUE!  overallRetention is 1.4.",
      "1 native formula kept the value of the file, since it comes out otherwise here:",
      '  Log!B1  =A1*2  saved "5", here #NAME?',
      "Log!C4 gives many values but shows the first: enter its formula again in the spreadsheet, and it spills; a program writes it as an array formula over all its cells.",
      "Pivot tables…",
    ]);
  });

  test("passes on nothing that a terminal would obey, and no formula of a thousand characters", () => {
    const evil = "\u001b]0;pwned\u0007\u009b31m\u202eevil\u2028";
    const long = { ...kept, sheet: evil, formula: "1+".repeat(1000), saved: "x".repeat(1000) };
    const report = {
      ...nothing,
      failures: [{ ...failure, sheet: evil, message: evil }],
      kept: [long],
    };
    const lines = reportOf(report, 0, [evil]).join("");
    expect(lines).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/u);
    expect(lines.length).toBeLessThan(1000);
  });

  test("gathers cells below one another that fail for one cause, and no others", () => {
    const share = (address: string, value: number) => ({
      ...failure,
      address,
      message: `headboxShare is ${value}.`,
    });
    const failures = [
      share("E4", 23.5),
      share("F4", 31),
      share("E5", 22.8),
      { ...share("E6", 24.1), error: "#N/A" },
      { ...failure, address: "E7", message: "headboxShare is blank." },
      share("E9", 25),
      share("E10", 26),
    ];
    expect(reportOf({ ...nothing, failures }, 0, []).slice(1)).toEqual([
      "7 cells failed:",
      "  Log!E4:E5  #VALUE!  2 cells, the first: headboxShare is 23.5.",
      "  Log!F4  #VALUE!  headboxShare is 31.",
      "  Log!E6  #N/A  headboxShare is 24.1.",
      "  Log!E7  #VALUE!  headboxShare is blank.",
      "  Log!E9:E10  #VALUE!  2 cells, the first: headboxShare is 25.",
    ]);
  });

  test("passes nothing on that a terminal would take for a command", () => {
    const cramped = [{ sheet: "\u001b[31mLog\r\n", address: "C4" }];
    for (const line of reportOf({ ...nothing, cramped }, 0, []))
      expect(line).not.toMatch(/\p{Cc}/u);
  });

  test.each([
    ["0 where all is well", nothing, 0],
    [
      "1 where a cell of ours fails, whatever else",
      { ...nothing, failures: [failure], kept: [kept] },
      1,
    ],
    ["3 where only native formulas come out otherwise", { ...nothing, kept: [kept] }, 3],
  ])("goes with the exit code %s", (_, report, code) => expect(exitCodeOf(report)).toBe(code));
});
