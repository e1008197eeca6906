import { UndoCommandId } from "@univerjs/core";
import { InsertRowMutation, MoveRangeMutation, RemoveRowMutation } from "@univerjs/sheets";
import { describe, expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { SORT_ROWS } from "../../../src/workbench/following/changes";
import { FollowedComments } from "../../../src/workbench/following/comments";
import { Follower } from "../../../src/workbench/following/follower";
import type { Step } from "../../../src/workbench/grid/one-step";
import { addressOf, parseArea } from "../../../src/workbook/address";
import { Commands } from "./commands";

test("a comment is found at its cell, wherever that goes, and replaces one that it is put over", () => {
  const commands = new Commands();
  const comments = new FollowedComments(commands.grid, new Follower(commands.grid));
  comments.take("log", [
    { area: parseArea("A1"), text: "one", id: "1" },
    { area: parseArea("B2"), text: "two", id: "2" },
  ]);
  const at = (address: string, sheetId = "log") =>
    comments.at({ sheetId, ...parseArea(address) })?.text;
  const seen = () => ["A1", "B2", "B3", "C3"].map((address) => at(address));

  expect(seen()).toEqual(["one", "two", undefined, undefined]);
  expect(at("A1", "other")).toBeUndefined();
  const inserted = { subUnitId: "log", range: rangeOf(parseArea("A2")) };
  commands.run({ id: InsertRowMutation.id, params: inserted });
  expect(seen()).toEqual(["one", undefined, "two", undefined]);
  const [from, to] = [{ subUnitId: "log" }, { subUnitId: "log" }];
  const cut = { from, to, fromRange: rangeOf(parseArea("A1")), toRange: rangeOf(parseArea("B3")) };
  commands.run({ id: MoveRangeMutation.id, params: cut });
  expect(seen()).toEqual([undefined, undefined, "one", undefined]);
  expect(comments.now(() => "Log").map(({ rule }) => rule?.text)).toEqual(["one"]);
  commands.run({ id: UndoCommandId }, { id: MoveRangeMutation.id, params: cut });
  expect(seen()).toEqual(["one", undefined, "two", undefined]);
  comments.forgetAll();
  expect(comments.now(() => "Log")).toEqual([]);
});

test("a comment goes with its row where rows are sorted, a rule and what stands beside do not", () => {
  const commands = new Commands();
  const follower = new Follower(commands.grid);
  const comments = new FollowedComments(commands.grid, follower);
  const rule = follower.follow("log", parseArea("A2"));
  comments.take("log", [
    { area: parseArea("A2"), text: "one", id: "1" },
    { area: parseArea("B4"), text: "two", id: "2" },
    { area: parseArea("D2"), text: "beside", id: "3" },
  ]);
  const seen = () =>
    comments.now(() => "Log").map(({ area: { row, column } }) => addressOf(row, column));

  // The rows 2, 3 and 4 come to stand as 4, 2 and 3.
  const moves = [[1, 3], [2, 1], [3, 2]]; // biome-ignore format: three pairs
  const params = { sheetId: "log", area: parseArea("A2:B4"), moves };
  commands.run({ id: SORT_ROWS, params });
  expect(seen()).toEqual(["A4", "B3", "D2"]);
  expect(rule().area).toEqual(parseArea("A2"));
  expect(follower.linesMoved).toBe(false);
  commands.run({ id: UndoCommandId }, { id: SORT_ROWS, params });
  expect(seen()).toEqual(["A2", "B4", "D2"]);
});

describe("a comment", () => {
  const start = () => {
    const commands = new Commands();
    const comments = new FollowedComments(commands.grid, new Follower(commands.grid));
    comments.take("log", [
      { area: parseArea("A1"), text: "one", author: "Lab", id: "1" },
      { area: parseArea("B2"), text: "two", id: "2" },
    ]);
    const step = (address: string, text: string) =>
      comments.step("book", { sheetId: "log", ...parseArea(address) }, text);
    const seen = () =>
      comments
        .now(() => "Log")
        .map(({ area: { row, column }, rule }) => `${addressOf(row, column)} ${rule?.text}`);
    const set = (address: string, text: string): Step => {
      const made = step(address, text);
      commands.run(made.todo);
      return made;
    };
    const undo = (...undone: Parameters<typeof commands.run>) =>
      commands.run({ id: UndoCommandId }, ...undone);
    return { commands, comments, set, undo, seen };
  };
  const row = { subUnitId: "log", range: rangeOf(parseArea("A1")) };

  test("is written, changed with its author kept, and removed; each is taken back and done again", () => {
    const { commands, comments, set, undo, seen } = start();
    const written = set("C3", "new");
    expect(seen()).toEqual(["A1 one", "B2 two", "C3 new"]);
    expect(comments.at({ sheetId: "log", row: 2, column: 2 })?.text).toBe("new");
    const changed = set("A1", "other");
    expect(comments.at({ sheetId: "log", row: 0, column: 0 })).toEqual({
      area: parseArea("A1"),
      text: "other",
      author: "Lab",
      id: "1",
    });
    const removed = set("C3", "");
    expect(seen()).toEqual(["A1 other", "B2 two"]);
    expect(comments.at({ sheetId: "log", row: 2, column: 2 })).toBeUndefined();
    for (const step of [removed, changed, written]) undo(step.undo);
    expect(seen()).toEqual(["A1 one", "B2 two"]);
    for (const step of [written, changed, removed]) commands.run(step.todo);
    expect(seen()).toEqual(["A1 other", "B2 two"]);
    undo(removed.undo);
    expect(seen()).toEqual(["A1 other", "B2 two", "C3 new"]);
  });

  test("goes with its cell, and stands where it stood when what came before is undone and done again", () => {
    const { commands, set, undo, seen } = start();
    commands.run({ id: InsertRowMutation.id, params: row });
    const written = set("C3", "new");
    commands.run({ id: InsertRowMutation.id, params: row });
    expect(seen()).toEqual(["A3 one", "B4 two", "C4 new"]);
    undo({ id: RemoveRowMutation.id, params: row });
    undo(written.undo);
    undo({ id: RemoveRowMutation.id, params: row });
    expect(seen()).toEqual(["A1 one", "B2 two"]);
    commands.run({ id: InsertRowMutation.id, params: row });
    commands.run(written.todo);
    expect(seen()).toEqual(["A2 one", "B3 two", "C3 new"]);
  });

  test("that was put over another takes that along when it is removed, and both come back to their cells", () => {
    const { commands, set, undo, seen } = start();
    const [from, to] = [{ subUnitId: "log" }, { subUnitId: "log" }];
    const put = (one: string, other: string) => ({
      id: MoveRangeMutation.id,
      params: { from, to, fromRange: rangeOf(parseArea(one)), toRange: rangeOf(parseArea(other)) },
    });
    commands.run(put("A1", "B2"));
    expect(seen()).toEqual(["B2 one"]);
    const changed = set("B2", "more");
    const removed = set("B2", "");
    expect(seen()).toEqual([]);
    undo(removed.undo);
    expect(seen()).toEqual(["B2 more"]);
    undo(changed.undo);
    undo(put("B2", "A1"));
    expect(seen()).toEqual(["A1 one", "B2 two"]);
  });
});
