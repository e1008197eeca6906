import {
  InsertColMutation,
  InsertRowMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { expect, test } from "vitest";
import { changeBy } from "../../../src/workbench/following/follower";
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
    expect(after(change(id, at))).toEqual({ areas, formulas: [now] });
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
  expect(after(moved)).toEqual({ areas, formulas: [now] });
});

test("each answer is counted from the rule as it was written, not from the answer before", () => {
  const { after } = rule([area(0, 0, 3)], unique);
  after(change(insertRow, 1));
  expect(after((followed) => [followed])).toEqual({ areas: [area(0, 0, 3)], formulas: [unique] });
});

test("a rule on several ranges goes on from the first that is left", () => {
  const { after } = rule([area(1, 0), area(5, 0, 2)], "=A2>$B$1");
  expect(after(change(removeRow, 1))).toEqual({
    areas: [area(4, 0, 2)],
    formulas: ["=A5>$B$1"],
  });
});

test("a rule has no cells once they are gone, and no formula once what it names is", () => {
  expect(rule([area(4, 0)], "=A5>$B$1").after(change(removeRow, 4)).areas).toEqual([]);
  const { formulas } = rule([area(4, 0)], "=A5>$B$1", "7").after(change(removeRow, 0));
  expect(formulas).toEqual([undefined, "7"]);
});

test("the source of a list grows with a row, on its own sheet only", () => {
  const list = () => rule([], "=Lists!$D$1:$D$3");
  expect(list().cells).toEqual([{ sheetId: "sheet-1", area: area(0, 3, 3) }]);
  const grown = list().after(change(insertRow, 1, "sheet-1"));
  expect(grown.formulas).toEqual(["=Lists!$D$1:$D$4"]);
  const same = list().after(change(insertRow, 1));
  expect(same.formulas).toEqual(["=Lists!$D$1:$D$3"]);
});
