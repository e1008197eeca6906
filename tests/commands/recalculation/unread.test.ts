import { describe, expect, test } from "vitest";
import { changeable, completed, withoutUnread } from "../../../src/commands/recalculation/unread";
import { addressOf } from "../../../src/workbook/address";
import type { Book } from "../../../src/workbook/book";
import { book, sheet } from "../../engine/sheet";

const log = sheet("Log", { A1: 1, B1: 2, C1: 3, A2: 4, B2: 5, C2: 6, A3: 7, B3: 8, C3: 9 });
const reading = (formula: string, rest: Partial<Book> = {}) =>
  withoutUnread(book([log, sheet("Calc", { A1: `=${formula}`, B9: "a remark" })], rest));
const left = ({ sheets }: Book, index: number) =>
  Object.entries(sheets[index]?.cells ?? {}).flatMap(([row, line]) =>
    Object.keys(line).map((column) => addressOf(Number(row), Number(column))),
  );

describe("of a sheet without formulas is computed with", () => {
  test.each([
    ["nothing that no formula reads", "1+1", []],
    ["what is read by address", "SUM(log!B1:B2)", ["B1", "B2"]],
    ["a whole column", "SUM(Log!B:B)", ["B1", "B2", "B3"]],
    [
      "what lies between",
      "Log!A1+SUM(Log!B2:INDEX(Log!B:B,2))",
      ["A1", "B1", "A2", "B2", "A3", "B3"],
    ],
    ["what a name stands for", "rate*2", ["C3"]],
    ["a table", "SUM(Days[Dose])", ["A1", "B1", "A2", "B2"]],
  ])("%s", (_, formula, cells) => {
    const small = reading(formula, {
      definedNames: [{ name: "rate", formula: "Log!$C$3" }],
      tables: [
        {
          name: "Days",
          sheet: "Log",
          area: { row: 0, column: 0, rows: 2, columns: 2 },
          columns: ["Day", "Dose"],
          headerRow: false,
          totalsRow: false,
        },
      ],
    });
    expect(left(small, 0)).toEqual(cells);
    expect(left(small, 1)).toEqual(["A1", "B9"]);
  });

  test.each(["OFFSET(A1,1,1)", 'INDIRECT("Log!"&B9)', "1+elsewhere"])("all, for %s", (formula) => {
    const definedNames = [{ name: "elsewhere", formula: 'INDIRECT("Log!A1")' }];
    const given = formula.includes("elsewhere") ? { definedNames } : {};
    expect(left(reading(formula, given), 0)).toHaveLength(9);
  });
});

test("what comes back is completed from what was there", () => {
  const original = book([log, sheet("Calc", { A1: "=1+1" })]);
  const computed = book([
    { ...log, cells: {} },
    sheet("Calc", { A1: { value: 2, formula: "1+1" } }),
  ]);
  const back = completed(changeable(computed), original);
  expect(back.sheets[0]).toBe(original.sheets[0]);
  expect(back.sheets[1]).toEqual(computed.sheets[1]);
});
