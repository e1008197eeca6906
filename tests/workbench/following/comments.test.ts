import { UndoCommandId } from "@univerjs/core";
import { InsertRowMutation, MoveRangeMutation } from "@univerjs/sheets";
import { expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { FollowedComments } from "../../../src/workbench/following/comments";
import { Follower } from "../../../src/workbench/following/follower";
import { parseArea } from "../../../src/workbook/address";
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
