import { UndoCommandId } from "@univerjs/core";
import {
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { beforeEach, describe, expect, test } from "vitest";
import { isGone } from "../../../src/workbench/following/followed";
import { Follower } from "../../../src/workbench/following/follower";
import { type Command, Commands } from "./commands";

const rows = (startRow: number, endRow: number) => ({
  startRow,
  endRow,
  startColumn: 0,
  endColumn: 50,
});
const onRows = (id: string, from: number, to = from, subUnitId = "log"): Command => ({
  id,
  params: { subUnitId, range: rows(from, to) },
});
const area = { row: 4, rows: 3, column: 1, columns: 2 };

describe("an area", () => {
  let commands: Commands;
  let follower: Follower;
  beforeEach(() => {
    commands = new Commands();
    follower = new Follower(commands.grid);
  });

  test("moves with rows and columns that are inserted before it, on its own sheet", () => {
    const now = follower.follow("log", area);
    commands.run(onRows(InsertRowMutation.id, 0, 1));
    commands.run(onRows(InsertRowMutation.id, 0, 1, "another"));
    commands.run({
      id: InsertColMutation.id,
      params: {
        subUnitId: "log",
        range: { startRow: 0, endRow: 999, startColumn: 1, endColumn: 1 },
      },
    });
    const there = { row: 6, rows: 3, column: 2, columns: 2 };
    expect(now()).toEqual({ sheetId: "log", area: there, bond: "named" });
  });

  test("over all rows of a table has those that are put in at their edges, too; another has not", () => {
    const bodies = [{ row: 4, rows: 3, column: 0, columns: 4 }];
    const into = (at: number): Command => ({
      id: InsertRowMutation.id,
      params: { subUnitId: "log", range: { ...rows(at, at + 1), bodies } },
    });
    for (const at of [4, 5, 7]) {
      const whole = follower.follow("log", area);
      const first = follower.follow("log", { ...area, rows: 1 });
      commands.run(into(at));
      expect(whole().area).toEqual({ ...area, rows: 5 });
      expect(first().area.row).toBe(at === 4 ? 6 : 4);
      commands.run({ id: UndoCommandId }, onRows(RemoveRowMutation.id, at, at + 1));
      expect(whole().area).toEqual(area);
    }
  });

  test("is gone with its cells, and back when that is undone", () => {
    const now = follower.follow("log", area);
    commands.run(onRows(RemoveRowMutation.id, 3, 8));
    expect(isGone(now())).toBe(true);
    commands.run({ id: UndoCommandId }, onRows(InsertRowMutation.id, 3, 8));
    expect(now().area).toEqual(area);
  });

  test("has its first row again when the removal of it is undone", () => {
    const now = follower.follow("log", area);
    commands.run(onRows(RemoveRowMutation.id, 4));
    expect(now().area).toMatchObject({ row: 4, rows: 2 });
    commands.run({ id: UndoCommandId }, onRows(InsertRowMutation.id, 4));
    expect(now().area).toEqual(area);
  });

  test("stays shorter where a row is removed, and another one inserted by hand", () => {
    const now = follower.follow("log", area);
    commands.run(onRows(RemoveRowMutation.id, 4));
    commands.run(onRows(InsertRowMutation.id, 4));
    expect(now().area).toMatchObject({ row: 5, rows: 2 });
  });

  test("goes with its rows when they are moved", () => {
    const now = follower.follow("log", area);
    commands.run({
      id: MoveRowsMutation.id,
      params: { subUnitId: "log", sourceRange: rows(4, 6), targetRange: rows(20, 22) },
    });
    expect(now().area).toMatchObject({ row: 17, rows: 3 });
  });

  test("is in two parts when one of its rows is moved away, each of which goes its own way", () => {
    const parts = follower.followParts({ sheetId: "log", area, bond: "ruled" });
    commands.run({
      id: MoveRowsMutation.id,
      params: { subUnitId: "log", sourceRange: rows(5, 5), targetRange: rows(20, 20) },
    });
    const rest = { ...area, rows: 2 };
    expect(parts().map(({ area }) => area)).toEqual([rest, { ...area, row: 19, rows: 1 }]);
    commands.run(onRows(InsertRowMutation.id, 10));
    expect(parts().map(({ area }) => area)).toEqual([rest, { ...area, row: 20, rows: 1 }]);
    commands.run({ id: UndoCommandId }, onRows(RemoveRowMutation.id, 10));
    commands.run(
      { id: UndoCommandId },
      {
        id: MoveRowsMutation.id,
        params: { subUnitId: "log", sourceRange: rows(19, 19), targetRange: rows(5, 5) },
      },
    );
    expect(parts()).toEqual([{ sheetId: "log", area, bond: "ruled" }]);
  });

  test("that has a rule leaves those of its cells that are cut and put elsewhere; one that is named stays whole", () => {
    const ruled = follower.followParts({ sheetId: "log", area, bond: "ruled" });
    const named = follower.follow("log", area);
    const params = {
      fromRange: { startRow: 6, endRow: 8, startColumn: 0, endColumn: 1 },
      toRange: { startRow: 26, endRow: 28, startColumn: 5, endColumn: 6 },
      from: { subUnitId: "log" },
      to: { subUnitId: "another" },
    };
    commands.run({ id: MoveRangeMutation.id, params });
    expect(ruled()).toMatchObject([
      { sheetId: "log", area: { row: 4, rows: 2, column: 1, columns: 2 } },
      { sheetId: "log", area: { row: 6, rows: 1, column: 2, columns: 1 } },
      { sheetId: "another", area: { row: 26, rows: 1, column: 6, columns: 1 }, putBy: 1 },
    ]);
    expect(named()).toMatchObject({ sheetId: "log", area });
    commands.run({ id: UndoCommandId }, { id: MoveRangeMutation.id, params });
    expect(ruled()).toMatchObject([{ sheetId: "log", area }]);
  });

  test("goes with its cells when they are cut and put on another sheet", () => {
    const now = follower.follow("log", area);
    const params = {
      fromRange: { startRow: 4, endRow: 6, startColumn: 0, endColumn: 3 },
      toRange: { startRow: 10, endRow: 12, startColumn: 5, endColumn: 8 },
      from: { subUnitId: "log" },
      to: { subUnitId: "copy" },
    };
    commands.run({ id: MoveRangeMutation.id, params });
    expect(now()).toMatchObject({
      sheetId: "copy",
      area: { row: 10, rows: 3, column: 6, columns: 2 },
    });
  });

  test("stands as in the beginning when all that moved was undone", () => {
    follower.follow("log", area);
    expect(follower.linesMoved).toBe(false);
    commands.run(onRows(RemoveRowMutation.id, 4));
    expect(follower.linesMoved).toBe(true);
    commands.run({ id: UndoCommandId }, onRows(InsertRowMutation.id, 4));
    expect(follower.linesMoved).toBe(false);
  });
});
