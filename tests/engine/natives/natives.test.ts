import { describe, expect, test } from "vitest";
import { numericNatives } from "../../../src/engine/natives/numbers";
import { openEngine } from "../../../src/engine/node";
import references from "../../references/native-functions.json";
import { probe } from "../probe";
import { book, cell, sheet, shown } from "../sheet";

const values = references.values as [string, number | string | boolean][];
const cells = Object.fromEntries(
  values.map(([formula], index) => [`A${index + 1}`, `=${formula}`]),
);
const engine = openEngine(probe);
const result = await engine.recalculate(book([sheet("Natives", cells)]));

// The grid's chi-squared distribution keeps nine digits; everything else that is listed is good to twelve.
const accuracy = (formula: string) => (formula.startsWith("CHISQ") ? 1e-8 : 1e-12);

test("native functions agree with values from outside", () => {
  const wrong = values.flatMap(([formula, expected], index) => {
    const value = shown(result, `A${index + 1}`);
    const close =
      typeof value === "number" && typeof expected === "number"
        ? Math.abs(value - expected) <= accuracy(formula) * (Math.abs(expected) || 1)
        : value === expected;
    return close ? [] : [`${formula} = ${value}, not ${expected}`];
  });
  expect(wrong).toEqual([]);
});

test("every corrected function stands in the table", () => {
  const listed = new Set(values.map(([formula]) => formula.split("(")[0]));
  expect(Object.keys(numericNatives).filter((name) => !listed.has(name))).toEqual([]);
});

describe("corrected functions", () => {
  const compute = async (content: Parameters<typeof sheet>[1]) =>
    engine.recalculate(book([sheet("S", content)]));

  test("work through ranges, a row and a column to a grid", async () => {
    const spilled = await compute({
      A2: -1,
      A3: 2,
      B1: 5,
      C1: 30,
      B2: "=T.DIST(A2:A3,B1:C1,TRUE)",
    });
    const single = await compute({ A1: "=T.DIST(2,30,TRUE)" });
    expect(cell(spilled, "B2")?.spill).toEqual({ rows: 2, columns: 2 });
    expect(shown(spilled, "C3")).toBe(shown(single, "A1"));
  });

  test.each([
    ["NORM.S.INV(0)", "#NUM!"],
    ["NORM.DIST(1,0,0,TRUE)", "#NUM!"],
    ["T.INV.2T(0,5)", "#NUM!"],
    ["T.DIST.2T(-1,5)", "#NUM!"],
    ["TDIST(1,5,3)", "#NUM!"],
    ["F.INV.RT(1.5,2,3)", "#NUM!"],
    ["GAMMA(-2)", "#NUM!"],
    ["GAMMA(172)", "#NUM!"],
    ["EDATE(-1,1)", "#NUM!"],
    ['GAMMA("many")', "#VALUE!"],
    ["GAMMA(1/0)", "#DIV/0!"],
  ])("%s is %s", async (formula, error) => {
    expect(shown(await compute({ A1: `=${formula}` }), "A1")).toBe(error);
  });
});
