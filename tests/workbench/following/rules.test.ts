import { UndoCommandId } from "@univerjs/core";
import { InsertRowMutation, MoveRangeMutation, RemoveRowMutation } from "@univerjs/sheets";
import { beforeEach, describe, expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { Follower } from "../../../src/workbench/following/follower";
import { followRule } from "../../../src/workbench/following/rules";
import { areaAddress, parseArea } from "../../../src/workbook/address";
import { Commands } from "./commands";

let commands: Commands;
let rules: () => string[];

/** Entry rules on the sheet Log, as they are to be saved. */
function put(...written: readonly (readonly [area: string, from: string])[]): void {
  commands = new Commands();
  const follower = new Follower(commands.grid);
  const followed = written.map(([area, from]) => {
    const rule = { area: parseArea(area), from };
    return followRule(follower, "entry rule", "log", rule, { from }, () => "");
  });
  const nameOf = (id: string) => ({ log: "Log", other: "Other" })[id];
  rules = () =>
    followed
      .flatMap((now) => now(nameOf))
      .map(
        ({ sheetId, rule }) =>
          `${sheetId === "log" ? "" : `${sheetId} `}${rule && areaAddress(rule.area)} ${rule?.from}`,
      );
}

const cutOf = (from: string, to: string, sheet = "log") => ({
  id: MoveRangeMutation.id,
  params: {
    fromRange: rangeOf(parseArea(from)),
    toRange: rangeOf(parseArea(to)),
    from: { subUnitId: "log" },
    to: { subUnitId: sheet },
  },
});

const cut = (...where: Parameters<typeof cutOf>) => commands.run(cutOf(...where));

const onRow = (id: string, row: number) =>
  commands.run({ id, params: { subUnitId: "log", range: rangeOf(parseArea(`A${row}:Z${row}`)) } });

describe("two rules", () => {
  beforeEach(() => put(["A1:A5", "A1>1"], ["C1:C2", "2"]));

  test("a rule that was put over another one replaces it there", () => {
    expect(rules()).toEqual(["A1:A5 A1>1", "C1:C2 2"]);
    cut("C1:C2", "A2:A3");
    expect(rules()).toEqual(["A1 A1>1", "A4:A5 A4>1", "A2:A3 2"]);
  });

  test("which does not come along where the cells are cut again, and is there again by undoing", () => {
    cut("C1:C2", "A2:A3");
    cut("A2:A3", "E2:E3");
    expect(rules()).toEqual(["A1 A1>1", "A4:A5 A4>1", "E2:E3 2"]);
    commands.run({ id: UndoCommandId }, cutOf("E2:E3", "A2:A3"));
    commands.run({ id: UndoCommandId }, cutOf("A2:A3", "C1:C2"));
    expect(rules()).toEqual(["A1:A5 A1>1", "C1:C2 2"]);
  });

  test("a rule that was put over its own cells stands there once", () => {
    cut("A1:A3", "A3:A5");
    expect(rules()).toEqual(["A3:A5 A3>1", "C1:C2 2"]);
    cut("A3", "A4");
    expect(rules()).toEqual(["A5 A5>1", "A4 A4>1", "C1:C2 2"]);
  });

  test("whichever of them comes first in the file", () => {
    cut("A1:A5", "C2:C6");
    expect(rules()).toEqual(["C2:C6 C2>1", "C1 2"]);
  });
});

describe("cells that are cut and put elsewhere take their rule along, which no longer stands where they were:", () => {
  test.each([
    ["from the middle", "B2>1", "B4:B5", "E8:E9", ["B2:B3 B2>1", "B6:B9 B6>1", "E8:E9 E8>1"]],
    ["from the top", "B2>1", "B2:B3", "E8:E9", ["B4:B9 B4>1", "E8:E9 E8>1"]],
    [
      "beside a limit in the row, which stays",
      "B2>$C2",
      "B2:B3",
      "E8:E9",
      ["B4:B9 B4>$C4", "E8:E9 E8>$C8"],
    ],
    ["with their limits", "B2>$C2", "B2:C3", "E8:F9", ["B4:B9 B4>$C4", "E8:E9 E8>$F8"]],
    [
      "reading a cell elsewhere",
      "B2>$H$1",
      "B4:B5",
      "E8:E9",
      ["B2:B3 B2>$H$1", "B6:B9 B6>$H$1", "E8:E9 E8>$H$1"],
    ],
    [
      "reading the column down to the cell itself",
      "COUNTIF(B$2:B2,B2)=1",
      "B4:B9",
      "E4:E9",
      ["B2:B3 COUNTIF(B$2:B2,B2)=1", "E4:E9 COUNTIF(E$2:E4,E4)=1"],
    ],
    [
      "reading cells far below by their distance",
      "B2>B42",
      "B2:B3",
      "E8:E9",
      ["B4:B9 B4>B44", "E8:E9 E8>E42"],
    ],
  ] as const)("%s", (_, formula, from, to, now) => {
    put(["B2:B9", formula]);
    cut(from, to);
    expect(rules()).toEqual(now);
    commands.run({ id: UndoCommandId }, cutOf(to, from));
    expect(rules()).toEqual([`B2:B9 ${formula}`]);
  });

  test("onto another sheet, where they read what stands on theirs", () => {
    put(["B2:B9", "B2>$C2"]);
    cut("B2:B3", "B2:B3", "other");
    expect(rules()).toEqual(["B4:B9 B4>$C4", "other B2:B3 B2>Log!$C2"]);
    put(["B2:B9", "B2>$C2"]);
    cut("B3:B4", "E8:E9", "other");
    expect(rules()).toEqual(["B2 B2>$C2", "B5:B9 B5>$C5", "other E8:E9 E8>Log!$C3"]);
  });

  test("each part then follows its own cells", () => {
    put(["B2:B9", "B2>$C2"]);
    cut("B4:C5", "E14:F15");
    onRow(InsertRowMutation.id, 10);
    onRow(RemoveRowMutation.id, 2);
    expect(rules()).toEqual(["B2 B2>$C2", "B5:B8 B5>$C5", "E14:E15 E14>$F14"]);
  });
});

test("a limit that is cut alone from the row of a cell does not take those of other rows along", () => {
  put(["B2:B9", "B2>$C2"]);
  cut("C2", "F2");
  expect(rules()).toEqual(["B2:B9 B2>$C2"]);
  cut("C2:C9", "F2:F9");
  expect(rules()).toEqual(["B2:B9 B2>$F2"]);
});

test("a rule whose first row is removed reads at the same distance as before", () => {
  put(["B2:B9", "B2>C42"]);
  onRow(RemoveRowMutation.id, 2);
  expect(rules()).toEqual(["B2:B8 B2>C42"]);
});
