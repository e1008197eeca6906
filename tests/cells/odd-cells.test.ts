import { describe, expect, test } from "vitest";
import { flag, text } from "../../src/cells/choice";
import { anyNumber, quantity } from "../../src/cells/quantity";
import { optionalTable } from "../../src/cells/table";
import { labels } from "../../src/cells/vector";
import { Refusal } from "../../src/model/refusal";

describe("cells that no person would type", () => {
  test("a text that fills pages is refused by its length", () => {
    const formula = text("formula", "a chemical formula");
    expect(() => formula.read([["C".repeat(10_000)]])).toThrow(
      "formula is a text of 10000 characters. Give a chemical formula.",
    );
    expect(formula.read([["C".repeat(255)]])).toHaveLength(255);
  });

  test.each([
    [{}, "no plain value"],
    [Object.create(null), "no plain value"],
    [true, "TRUE"],
    [" ", "blank"],
  ])("a label that is %j is refused with what it is", (cell, shown) => {
    expect(() => labels("levels", "n").read([["blank", cell]])).toThrow(
      `levels (2 of 2) is ${shown}. Give a name or a number.`,
    );
  });

  test.each(["3 %", "3%", "8,5", "1.234,5", "1 234", "1'234.5", "-2e-3", " 7 ", "−4", ".5", "12."])(
    "the text %j looks like a number, and is refused with the way to mend it",
    (cell) => {
      expect(() => quantity("dose", "kg/t", anyNumber).read([[cell]])).toThrow(
        `dose is the text "${cell}" that looks like a number: convert the column.`,
      );
    },
  );

  test.each(["n/a", "5 s", "2026-11-25", "%", "e5", ", ", "1 to 2"])(
    "the text %j does not, nor is it pondered for long",
    (cell) => {
      const read = (text: string) => quantity("dose", "kg/t", anyNumber).read([[text]]);
      expect(() => read(cell)).toThrow(`dose is the text "${cell}". Give a number [kg/t].`);
      expect(() => read(`${"1 ".repeat(10_000)}x`)).toThrow(/^dose is the text "1 1 .*…"\. Give/);
    },
  );

  test.each([
    ["TRUE", true],
    [" false ", false],
    [1, true],
    [0, false],
  ])("a flag takes %j for what it says", (cell, meant) => {
    expect(flag("blank", true).read([[cell]])).toBe(meant);
  });

  test.each(["yes", 2, "1"])("a flag does not guess at %j", (cell) => {
    expect(() => flag("blank", true).read([[cell]])).toThrow("Give TRUE or FALSE.");
  });

  test("what is no plain value in a table is refused where it is needed, not before", () => {
    const table = optionalTable("ownTable").read([
      ["name", "kind"],
      ["mine", Object.create(null)],
    ]);
    expect(table?.[0]).toEqual(["name", "kind"]);
    expect(table?.[1]?.[1]).toBeInstanceOf(Refusal);
  });
});
