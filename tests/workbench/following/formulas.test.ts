import { InsertColMutation, InsertRowMutation, RemoveRowMutation } from "@univerjs/sheets";
import { describe, expect, test } from "vitest";
import { Follower } from "../../../src/workbench/following/follower";
import { followFormulas } from "../../../src/workbench/following/formulas";
import type { Area } from "../../../src/workbook/book";
import { Commands } from "./commands";

const area = (row: number, column: number, rows = 1, columns = 1): Area => ({
  row,
  column,
  rows,
  columns,
});
const ids: Readonly<Record<string, string>> = { Log: "sheet-0", "Own additive": "sheet-1" };

/** The formula of a rule over `home` on the sheet Log, after the changes. */
function readAfter(
  formula: string,
  home: Area,
  changes: readonly [id: string, at: number, sheet?: string][],
  names = ids,
): string | undefined {
  const commands = new Commands();
  const follower = new Follower(commands.grid);
  const its = { sheetId: "sheet-0", area: home };
  const { reads, at } = followFormulas(its, { formula }, (name) => ids[name] ?? "none");
  const parts = follower.followParts({ ...its, bond: "ruled", reads });
  for (const [id, at, subUnitId = "sheet-0"] of changes) {
    const lines = id === InsertColMutation.id ? { startColumn: at, endColumn: at } : {};
    const range = { startRow: at, endRow: at, startColumn: 0, endColumn: 99, ...lines };
    commands.run({ id, params: { subUnitId, range } });
  }
  const [part] = parts();
  const nameOf = (id: string) => Object.keys(names).find((name) => names[name] === id);
  return part && at(part, nameOf)?.formula;
}

const insertRow = InsertRowMutation.id;
const insertColumn = InsertColMutation.id;
const removeRow = RemoveRowMutation.id;

describe("the formula of a rule", () => {
  test.each([
    [
      "says the same where nothing moved",
      "AND(ISNUMBER(H9),H9<alpha)",
      area(8, 7, 8),
      [],
      "AND(ISNUMBER(H9),H9<alpha)",
    ],
    [
      "follows what it names with dollar signs",
      "ABS(SUM($B$5:$B$7)-1)>0.005",
      area(4, 1, 3),
      [[insertRow, 1]],
      "ABS(SUM($B$6:$B$8)-1)>0.005",
    ],
    [
      "grows with a row between its ends",
      "SUM($B$5:$B$7)>1",
      area(4, 1, 3),
      [[insertRow, 5]],
      "SUM($B$5:$B$8)>1",
    ],
    [
      "reads its own row from its first cell on",
      "S5<$J5",
      area(4, 18, 30),
      [[insertRow, 0]],
      "S6<$J6",
    ],
    [
      "takes a column that moves away from its own",
      "S5<$J5",
      area(4, 18, 30),
      [[insertColumn, 12]],
      "T5<$J5",
    ],
    [
      "reads its own row where the first one is removed",
      'F28="A"',
      area(27, 5, 12),
      [[removeRow, 27]],
      'F28="A"',
    ],
    [
      "follows a cell elsewhere that is written without dollar signs",
      "B2>C40",
      area(1, 1),
      [[insertRow, 20]],
      "B2>C41",
    ],
    [
      "follows cells of another sheet, with the mark of a spill",
      "'Own additive'!$I$5#",
      area(12, 1),
      [
        [insertRow, 0, "sheet-1"],
        [insertRow, 0],
      ],
      "'Own additive'!$I$6#",
    ],
    [
      "follows whole columns",
      "COUNTIF(Log!$C:$D,B2)=SUM(B:B)",
      area(1, 1),
      [[insertColumn, 3]],
      "COUNTIF($C:$E,B2)=SUM(B:B)",
    ],
    [
      "takes its own column with it, whole or not",
      "COUNTIF(B:B,B2)=1",
      area(1, 1, 9),
      [
        [insertColumn, 0],
        [insertRow, 0],
      ],
      "COUNTIF(C:C,C3)=1",
    ],
    [
      "follows whole rows",
      "SUM($4:5)>1",
      area(1, 1),
      [
        [insertRow, 4],
        [removeRow, 0],
      ],
      "SUM($3:5)>1",
    ],
    ["leaves a text as it is", '"even,ratio B4"', area(6, 1), [[insertRow, 0]], '"even,ratio B4"'],
    [
      "has nothing to say once its cells are gone",
      "$B$40>1",
      area(1, 1),
      [[removeRow, 39]],
      undefined,
    ],
  ] as const)("%s", (_, formula, home, changes, then) => {
    expect(readAfter(formula, home, changes as never)).toBe(then);
  });

  test("calls a sheet as it is called now", () => {
    const renamed = { Log: "sheet-0", "Our own": "sheet-1" };
    expect(readAfter("'Own additive'!$I$5", area(0, 0), [], renamed)).toBe("'Our own'!$I$5");
    expect(readAfter("'Own additive'!$I$5", area(0, 0), [], { Log: "sheet-0" })).toBeUndefined();
  });
});
