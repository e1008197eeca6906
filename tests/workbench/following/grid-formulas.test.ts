import {
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { changeBy } from "../../../src/workbench/following/changes";
import { followInGrid } from "../../../src/workbench/following/grid-formulas";
import type { Area } from "../../../src/workbook/book";

const area = (row: number, column: number, rows = 1, columns = 1): Area => ({
  row,
  column,
  rows,
  columns,
});

const ids: Readonly<Record<string, string>> = { Log: "sheet-0", Lists: "sheet-1" };
const sheets = {
  getSheetBySheetName: (name: string) => ids[name] && { getSheetId: () => ids[name] },
  getSheetBySheetId: (id: string) => {
    const name = Object.keys(ids).find((one) => ids[one] === id);
    return name && { getName: () => name };
  },
} as never;

const rule = (areas: readonly Area[], ...formulas: string[]) =>
  followInGrid(sheets, "sheet-0", areas, formulas);

function change(id: string, at: number, subUnitId = "sheet-0") {
  const byColumn = id === InsertColMutation.id || id === RemoveColMutation.id;
  const range = byColumn
    ? { startRow: 0, endRow: 99, startColumn: at, endColumn: at }
    : { startRow: at, endRow: at, startColumn: 0, endColumn: 99 };
  const found = changeBy(id, { subUnitId, range });
  if (!found) throw new Error("No such change.");
  return found;
}

const [insertRow, removeRow] = [InsertRowMutation.id, RemoveRowMutation.id];
const unique = "=COUNTIF($A$1:$A$3,A1)=1";

test.each([
  ["a row between", insertRow, 1, [area(0, 0, 4)], "=COUNTIF($A$1:$A$4,A1)=1"],
  ["a row before", insertRow, 0, [area(1, 0, 3)], "=COUNTIF($A$2:$A$4,A2)=1"],
  ["a row behind", insertRow, 3, [area(0, 0, 3)], unique],
  ["a row less between", removeRow, 1, [area(0, 0, 2)], "=COUNTIF($A$1:$A$2,A1)=1"],
  ["the first row less", removeRow, 0, [area(0, 0, 2)], "=COUNTIF($A$1:$A$2,A1)=1"],
  ["a column before", InsertColMutation.id, 0, [area(0, 1, 3)], "=COUNTIF($B$1:$B$3,B1)=1"],
] as const)(
  "a rule without doubles, after %s, counts in its own cells",
  (_, id, at, areas, now) => {
    const { after } = rule([area(0, 0, 3)], unique);
    expect(after(change(id, at))).toEqual([{ sheetId: "sheet-0", areas, formulas: [now] }]);
  },
);

test.each([
  ["all of them", [0, 2], 9, [area(6, 0, 3)], "=COUNTIF($A$7:$A$9,A7)=1"],
  ["one of them", [1, 1], 9, [area(0, 0, 2), area(8, 0)], "=COUNTIF($A$1:$A$2,A1)=1"],
  ["the first of them, to their end,", [0, 0], 3, [area(0, 0, 3)], unique],
] as const)("a rule goes with its rows when %s are moved", (_, [from, last], to, areas, now) => {
  const rows = (startRow: number, endRow: number) => ({
    startRow,
    endRow,
    startColumn: 0,
    endColumn: 99,
  });
  const moved = changeBy(MoveRowsMutation.id, {
    subUnitId: "sheet-0",
    sourceRange: rows(from, last),
    targetRange: rows(to, to + last - from),
  });
  if (!moved) throw new Error("No such change.");
  const { after } = rule([area(0, 0, 3)], unique);
  expect(after(moved)).toEqual([{ sheetId: "sheet-0", areas, formulas: [now] }]);
});

test.each([
  ["without its limit", 1, [[[area(1, 1), area(4, 1, 2), area(7, 4, 2)], "=B2>$C2"]]],
  [
    "with its limit",
    2,
    [
      [[area(1, 1), area(4, 1, 2)], "=B2>$C2"],
      [[area(7, 4, 2)], "=E8>$F8"],
    ],
  ],
] as const)("a part of a rule that is cut %s reads what it read", (_, columns, rules) => {
  const [from, to] = [area(2, 1, 2, columns), area(7, 4, 2, columns)];
  const sheet = { subUnitId: "sheet-0" };
  const params = { from: sheet, to: sheet, fromRange: rangeOf(from), toRange: rangeOf(to) };
  const cut = changeBy(MoveRangeMutation.id, params);
  if (!cut) throw new Error("No such change.");
  const { after } = rule([area(1, 1, 5)], "=B2>$C2");
  expect(after(cut)).toEqual(
    rules.map(([areas, formula]) => ({ sheetId: "sheet-0", areas, formulas: [formula] })),
  );
});

test("each answer is counted from the rule as it was written, not from the answer before", () => {
  const { after } = rule([area(0, 0, 3)], unique);
  after(change(insertRow, 1));
  expect(after((followed) => [followed])).toMatchObject([
    { areas: [area(0, 0, 3)], formulas: [unique] },
  ]);
});

test("a rule on several ranges goes on from the first that is left", () => {
  const { after } = rule([area(1, 0), area(5, 0, 2)], "=A2>$B$1");
  expect(after(change(removeRow, 1))).toMatchObject([
    { areas: [area(4, 0, 2)], formulas: ["=A5>$B$1"] },
  ]);
});

test("a rule is gone once its cells are, and once what it names is", () => {
  expect(rule([area(4, 0)], "=A5>$B$1").after(change(removeRow, 4))).toEqual([]);
  expect(rule([area(4, 0)], "=A5>$B$1", "7").after(change(removeRow, 0))).toEqual([]);
});

test("the source of a list grows with a row, on its own sheet only", () => {
  const list = rule([area(0, 1, 3)], "=Lists!$D$1:$D$3");
  expect(list.cells).toContainEqual(
    expect.objectContaining({ sheetId: "sheet-1", area: area(0, 3, 3) }),
  );
  const grown = list.after(change(insertRow, 1, "sheet-1"));
  expect(grown).toMatchObject([{ areas: [area(0, 1, 3)], formulas: ["=Lists!$D$1:$D$4"] }]);
  const same = list.after(change(insertRow, 1));
  expect(same).toMatchObject([{ areas: [area(0, 1, 4)], formulas: ["=Lists!$D$1:$D$3"] }]);
});
