import { describe, expect, test } from "vitest";
import { openEngine } from "../../src/engine/node";
import type { DefinedName, Table } from "../../src/workbook/book";
import { probe } from "./probe";
import { book, cell, sheet } from "./sheet";

const engine = openEngine(probe);

type Content = Parameters<typeof sheet>[1];

/** What a cell of a workbook of these two sheets says of its error. */
async function said(
  at: string,
  input: Content,
  result: Content = {},
  rest: { definedNames?: readonly DefinedName[]; tables?: readonly Table[] } = {},
) {
  const sheets = [sheet("Mill log", input), sheet("Result", result)];
  const computed = await engine.recalculate(book(sheets, rest));
  const [address = "", name = "Mill log"] = at.split("!").reverse();
  return cell(computed, address, name)?.value;
}

const refused = "The value is -1. Give one above 0.";
const input = { A1: -1, A2: 2, B1: "=WETEND.PROBE.POSITIVE(A1:A2)" };

describe("an error that came from another cell says from which, and why it arose there", () => {
  const from = { error: "#VALUE!", message: `From B1: ${refused}` };
  const fromAfar = { error: "#VALUE!", message: `From 'Mill log'!B1: ${refused}` };

  test.each([
    ["a native formula", { C1: "=2*B1" }, "C1", from],
    ["a native function of a range", { C1: "=MAX(A1:B2)" }, "C1", from],
    ["a native formula of a native formula", { C1: "=2*B1", D1: "=C1+1" }, "D1", from],
    [
      "a function of ours behind a native formula",
      { C1: "=2*B1", D1: "=WETEND.PROBE.SAME(C1)" },
      "D1",
      from,
    ],
    ["a spilled answer", { C1: "=SUM(B1#)" }, "C1", from],
    ["another sheet", {}, "Result!A1", fromAfar],
    ["another sheet, and cells between", {}, "Result!A3", fromAfar],
  ])("%s", async (_, more, at, expected) => {
    const result = {
      A1: "='Mill log'!B1*2",
      A2: "=WETEND.PROBE.SAME('Mill log'!C9)",
      A3: "=A2&A2",
    };
    expect(await said(at, { ...input, C9: "=WETEND.PROBE.SAME(B1)", ...more }, result)).toEqual(
      expected,
    );
  });

  test("by a name, and by the column of a table", async () => {
    const table: Table = {
      name: "Log",
      sheet: "Mill log",
      area: { row: 0, column: 0, rows: 3, columns: 2 },
      columns: ["Day", "Dose"],
      headerRow: true,
      totalsRow: false,
    };
    const cells = {
      A1: "Day",
      B1: "Dose",
      A2: "=1/0",
      A3: 2,
      B2: 3,
      B3: "=WETEND.PROBE.REFUSE(7)",
    };
    const rest = {
      tables: [table],
      definedNames: [{ name: "dose", formula: "'Mill log'!$B$3" }],
    };
    const from = { error: "#N/A", message: "From 'Mill log'!B3: Nothing answers 7." };
    expect(await said("Result!A1", cells, { A1: "=dose+1" }, rest)).toEqual(from);
    expect(await said("Result!A1", cells, { A1: "=SUM(Log[Dose])" }, rest)).toEqual(from);
  });

  test("of several cells that fail it is the one of its own row", async () => {
    const cells = { A1: -1, A2: -2, B1: "=WETEND.PROBE.POSITIVE(A1:A2)", C1: "=2*B1:B2" };
    expect(await said("C2", cells)).toEqual({
      error: "#VALUE!",
      message: "From B2: The value is -2. Give one above 0.",
    });
  });

  test.each([
    ["sorted", "=SORT(B1:C4,2,-1)", "D1", "From B4: The value is -3. Give one above 0."],
    ["sorted", "=SORT(B1:C4,2,-1)", "D3", "From B2: The value is -2. Give one above 0."],
    ["filtered", "=FILTER(B1:B4,C1:C4>2)", "D2", "From B4: The value is -3. Give one above 0."],
    ["taken", "=TAKE(B1:B4,-3)", "D1", "From B2: The value is -2. Give one above 0."],
    ["picked", "=INDEX(B1:B4,4)", "D1", "From B4: The value is -3. Give one above 0."],
    [
      "looked up",
      "=VLOOKUP(4,HSTACK(C1:C4,B1:B4),2,FALSE)",
      "D1",
      "From B4: The value is -3. Give one above 0.",
    ],
    [
      "stacked",
      "=VSTACK(1,SORTBY(B1:B4,C1:C4,-1))",
      "D2",
      "From B4: The value is -3. Give one above 0.",
    ],
    [
      "sorted and given to a function of ours",
      "=WETEND.PROBE.SAME(SORTBY(B1:B4,C1:C4,-1))",
      "D1",
      "From B4: The value is -3. Give one above 0.",
    ],
    [
      "sorted where it arose",
      "=SORTBY(WETEND.PROBE.POSITIVE(A1:A4),C1:C4,-1)",
      "D1",
      "The value is -3. Give one above 0.",
    ],
  ])("an error that is %s keeps its own cell: %s", async (_, formula, at, message) => {
    const cells = { A1: 1, A2: -2, A3: 3, A4: -3, B1: "=WETEND.PROBE.POSITIVE(A1:A4)" };
    const keys = { C1: 1, C2: 2, C3: 3, C4: 4, D1: formula };
    expect(await said(at, { ...cells, ...keys })).toEqual({ error: "#VALUE!", message });
  });

  test("an error that is caught, or of another kind, is passed over", async () => {
    const cells = { ...input, C1: "=IFERROR(B1,0)+D1", D1: "=2*E1", E1: "lost", F1: "=1/0" };
    expect(await said("C1", cells)).toEqual({
      error: "#VALUE!",
      message: 'From D1: E1 is the text "lost". Give a number.',
    });
  });

  test("a long chain of cells, and a circle, come to an end", async () => {
    const cells: Content = { ...input, C1: "=2*B1" };
    for (let row = 2; row <= 3000; row++) cells[`C${row}`] = `=C${row - 1}+1`;
    expect(await said("C3000", cells)).toEqual(from);
    const circle = { A1: "=A2+1", A2: "=A1+1", A3: "=A2*2" };
    expect(await said("A3", circle)).toEqual({
      error: "#REF!",
      message: "The formula reads a cell that reads its own answer. Break that circle.",
    });
  });
});

test("TAKE of a list says that it takes single numbers, in one cell", async () => {
  const cells = { A1: 1, A2: 2, B1: "=TAKE(A1:A2,{1,2})" };
  expect(await said("B1", cells)).toEqual({
    error: "#VALUE!",
    message:
      "TAKE wants one number of rows and one of columns, not a list. CHOOSEROWS and CHOOSECOLS take lists.",
  });
  expect(await said("C1", cells)).toBeUndefined();
});

describe("a native formula names the cell at fault, where that is plain", () => {
  const text = (address: string) => `${address} is the text "n/a". Give a number.`;
  const zero = (address: string, what: string) =>
    `${address} is ${what}, and the formula divides by it. Give a number other than 0.`;

  test.each<[string, Content, string | undefined]>([
    ["=A1+B1", { A1: 1, B1: "n/a" }, text("B1")],
    ["=-B1", { B1: "n/a" }, text("B1")],
    ["=SUM(A1:B1)+B1%", { A1: 1, B1: "n/a" }, text("B1")],
    ["=SUMPRODUCT(A1:A2*B1:B2)", { A1: 1, A2: 2, B1: 3, B2: "n/a" }, text("B2")],
    ['="12"*A1+B1', { A1: " 3 ", B1: "n/a" }, text("B1")],
    ["=A1+B1", { A1: 1, B1: '=""' }, "B1 is an empty text. Give a number."],
    ["=A1/B1", { A1: 1, B1: 0 }, zero("B1", "0")],
    ["=A1/B1", { A1: 1 }, zero("B1", "blank")],
    ["=A1/(B1-B1)", { A1: 1, B1: 2 }, undefined],
    ['=IF(B1="n/a",VALUE(A1),0)', { A1: "x", B1: "n/a" }, undefined],
  ])("%s", async (formula, cells, message) => {
    const value = await said("D4", { ...cells, D4: formula });
    expect(value).toMatchObject({ error: expect.stringMatching(/^#(VALUE|DIV\/0)!$/) });
    expect((value as { message?: string }).message).toBe(message);
  });
});
