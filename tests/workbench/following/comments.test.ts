import { UndoCommandId } from "@univerjs/core";
import { InsertRowMutation, MoveRangeMutation } from "@univerjs/sheets";
import { expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { SORT_ROWS } from "../../../src/workbench/following/changes";
import { FollowedComments } from "../../../src/workbench/following/comments";
import { Follower } from "../../../src/workbench/following/follower";
import { addressOf, parseArea } from "../../../src/workbook/address";
import { Commands } from "./commands";

test("a comment is found at its cell, wherever that goes, and replaces one that it is put over", () => {
  const commands = new Commands();
  const comments = new FollowedComments(new Follower(commands.grid));
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
  const comments = new FollowedComments(follower);
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
