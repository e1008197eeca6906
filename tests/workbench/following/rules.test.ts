import { MoveRangeMutation } from "@univerjs/sheets";
import { beforeEach, expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { Follower } from "../../../src/workbench/following/follower";
import { followRule, replaced } from "../../../src/workbench/following/rules";
import { areaAddress, parseArea } from "../../../src/workbook/address";
import { Commands } from "./commands";

let commands: Commands;
let rules: () => string[];

/** Two entry rules, as they are to be saved. */
beforeEach(() => {
  commands = new Commands();
  const follower = new Follower(commands.grid);
  const followed = [
    ["A1:A5", "A1>1"],
    ["C1:C2", "2"],
  ].map(([area = "", from = ""]) => {
    const rule = { area: parseArea(area), from };
    return followRule(follower, "log", rule, { from }, () => "");
  });
  rules = () =>
    replaced(followed.flatMap((now) => now(() => "Log"))).map(
      ({ rule }) => `${rule && areaAddress(rule.area)} ${rule?.from}`,
    );
});

const cut = (from: string, to: string) =>
  commands.run({
    id: MoveRangeMutation.id,
    params: {
      fromRange: rangeOf(parseArea(from)),
      toRange: rangeOf(parseArea(to)),
      from: { subUnitId: "log" },
      to: { subUnitId: "log" },
    },
  });

test("a rule that was put over another one replaces it there", () => {
  expect(rules()).toEqual(["A1:A5 A1>1", "C1:C2 2"]);
  cut("C1:C2", "A2:A3");
  expect(rules()).toEqual(["A1 A1>1", "A4:A5 A4>1", "A2:A3 2"]);
});

test("whichever of them comes first in the file", () => {
  cut("A1:A5", "C2:C6");
  expect(rules()).toEqual(["C2:C6 C2>1", "C1 2"]);
});
