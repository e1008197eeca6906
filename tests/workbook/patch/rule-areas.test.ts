import { describe, expect, test } from "vitest";
import { parseArea } from "../../../src/workbook/address";
import { patchRuleAreas, ruleMoves } from "../../../src/workbook/patch/rule-areas";
import type { EntryRule } from "../../../src/workbook/sheet-rules";

const rule = (area: string, from = "1", type: EntryRule["type"] = "custom"): EntryRule => ({
  area: parseArea(area),
  type,
  from,
  blank: true,
});

const moves = (before: readonly EntryRule[], now: readonly EntryRule[]) => {
  const { moves, left } = ruleMoves({ entryRules: before }, { entryRules: now });
  return { moves: [...(moves.get("dataValidation") ?? [])], left };
};

describe("the area of a rule alone is changed in its file where", () => {
  test.each([
    ["nothing changed", [rule("A2:A4", "A2>1")], [rule("A2:A4", "A2>1")], []],
    ["it took in rows", [rule("A2:A4", "A2>1")], [rule("A2:A5", "A2>1")], [["A2:A4", "A2:A5"]]],
    [
      "it names no cell by its distance",
      [rule("A2", "$B$1")],
      [rule("E2", "$B$1")],
      [["A2", "E2"]],
    ],
    [
      "two have the same one",
      [rule("A2"), rule("A2", "2")],
      [rule("B2"), rule("B2", "2")],
      [["A2", "B2"]],
    ],
  ])("%s", (_, before, now, areas) => {
    expect(moves(before, now)).toEqual({ moves: areas, left: [] });
  });
});

describe("a rule is left as its file has it where", () => {
  test.each([
    ["it is in two parts now", [rule("A2:A4")], [rule("A2:A3"), rule("E4")]],
    ["it reads other cells", [rule("A2", "$B$1")], [rule("A2", "$C$1")]],
    [
      "it stands elsewhere and names a cell by its distance",
      [rule("A2", "B7")],
      [rule("E2", "B7")],
    ],
    ["two that had one area have not any more", [rule("A2"), rule("A2")], [rule("A2"), rule("B2")]],
  ])("%s", (_, before, now) => {
    expect(moves(before, now)).toEqual({ moves: [], left: ["entry rules"] });
  });
});

test("the areas are changed in every rule of their kind, and nothing else", () => {
  const xml =
    '<x:worksheet xmlns:x="x"><x:sheetData/><x:conditionalFormatting sqref="A2:A4"><x:cfRule/></x:conditionalFormatting>' +
    '<x:dataValidations count="2"><x:dataValidation error="A2:A4" sqref="A2:A4 C1"/><x:dataValidation sqref="B2:B4"><x:formula1>A2:A4</x:formula1></x:dataValidation></x:dataValidations>' +
    '<x:extLst><y:dataValidation xmlns:y="y"><z:sqref xmlns:z="z">A2:A4</z:sqref></y:dataValidation></x:extLst></x:worksheet>';
  const patched = patchRuleAreas(
    "sheet",
    xml,
    new Map([["dataValidation", new Map([["A2:A4", "A2:A5"]])]]),
  );
  expect(patched).toBe(
    xml
      .replace('sqref="A2:A4 C1"', 'sqref="A2:A5 C1"')
      .replace(">A2:A4</z:sqref>", ">A2:A5</z:sqref>"),
  );
});
