import { describe, expect, test } from "vitest";
import { text } from "../../src/cells/choice";
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

  test("what is no plain value in a table is refused where it is needed, not before", () => {
    const table = optionalTable("ownTable").read([
      ["name", "kind"],
      ["mine", Object.create(null)],
    ]);
    expect(table?.[0]).toEqual(["name", "kind"]);
    expect(table?.[1]?.[1]).toBeInstanceOf(Refusal);
  });
});
