import { describe, expect, test } from "vitest";
import { cameFrom, rowFrom, writtenCalls } from "../../../src/pane/working/given";

describe("the calls that a formula writes", () => {
  test.each<[string, { id: string; given: string[] }[]]>([
    [
      "=ROUND(WETEND.DOSE.PUMP(Log!B4:B6, 9.3, 3%),1)+2",
      [{ id: "DOSE.PUMP", given: ["Log!B4:B6", "9.3", "3%"] }],
    ],
    [
      "=wetend.dose.target(wetend.retention.loop(A1,{1,2},B1),,INDEX(C:C,1))",
      [
        { id: "RETENTION.LOOP", given: ["A1", "{1,2}", "B1"] },
        { id: "DOSE.TARGET", given: ["wetend.retention.loop(A1,{1,2},B1)", "", "INDEX(C:C,1)"] },
      ],
    ],
    ['=WETEND.EFFLUENT.OXYGEN("C,(H")', [{ id: "EFFLUENT.OXYGEN", given: ['"C,(H"'] }]],
    [
      "=WETEND.DOSE.TARGET(Log[a,b],'It''s, mine'!B2)",
      [{ id: "DOSE.TARGET", given: ["Log[a,b]", "'It''s, mine'!B2"] }],
    ],
    ["=SUM(A1:A3)", []],
  ])("%s", (formula, calls) => {
    expect(writtenCalls(formula, "WETEND")).toMatchObject(calls);
  });
});

describe("where the number of one cell came from", () => {
  test.each([
    ["Log!B4:B33", 2, 0, "Log!B6"],
    ["$B$4:$D$4", 5, 1, "C4"],
    ["'Mill log'!B4:C9", 1, 1, "'Mill log'!C5"],
    ["B4", 3, 3, "B4"],
    ["0.03", 1, 0, "0.03"],
    ["Log[steam]", 1, 0, "Log[steam]"],
    ["B4:B5", 7, 0, "B4:B5"],
  ])("%s, row %i, column %i is %s", (given, row, column, from) => {
    expect(cameFrom(given, row, column)).toBe(from);
  });

  test("of a block with a case a row, the row of that case", () => {
    expect(rowFrom("Log!B4:D9", 2)).toBe("Log!B6:D6");
    expect(rowFrom("B4:D4", 2)).toBe("B4:D4");
    expect(rowFrom("shares", 2)).toBe("shares");
  });
});
