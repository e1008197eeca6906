import { describe, expect, inject, test } from "vitest";
import { recalculate } from "../../../src/commands/recalculation/recalculate";
import { openEngine } from "../../../src/engine/node";
import { parseAddress } from "../../../src/workbook/address";
import { type Book, type Cell, cellAt, type DefinedName } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";

const functions = inject("functions");
const names = functionNames(functions.metadata.functions.map(({ id }) => id));
const engine = openEngine(functions);

function bookOf(list: Record<string, Cell>, definedNames: DefinedName[] = []): Book {
  const cells: Record<number, Record<number, Cell>> = {};
  for (const [address, cell] of Object.entries(list)) {
    const { row, column } = parseAddress(address);
    cells[row] = { ...cells[row], [column]: cell };
  }
  return { sheets: [{ name: "S", cells }], tables: [], styles: {}, definedNames };
}

const at = (book: Book, address: string) => {
  const { row, column } = parseAddress(address);
  return book.sheets[0] && cellAt(book.sheets[0], row, column);
};

const run = (list: Record<string, Cell>, all = false, definedNames: DefinedName[] = []) =>
  recalculate(bookOf(list, definedNames), engine, names, { all });

const dose = (value: Cell["value"]): Cell => ({ value, formula: "WETEND.DOSE.TARGET(A1,A2)" });
const inputs = { A1: { value: 6.5 }, A2: { value: 0.8 } };

describe("our formulas and those that read them", () => {
  test("are computed anew, and what they do not reach stays to the last digit", async () => {
    const { book, ours, failures, kept } = await run({
      ...inputs,
      B1: dose(99),
      B2: { value: 198, formula: "B1*2" },
      B3: { value: 0.3, formula: "0.1+0.2" },
    });
    expect(at(book, "B1")).toEqual({ value: 8.125, formula: "WETEND.DOSE.TARGET(A1,A2)" });
    expect(at(book, "B2")).toEqual({ value: 16.25, formula: "B1*2" });
    expect(at(book, "B3")).toEqual({ value: 0.3, formula: "0.1+0.2" });
    expect({ ours, failures, kept }).toEqual({ ours: 1, failures: [], kept: [] });
  });

  test("that give an empty text are no blank cells to those that read them", async () => {
    const { book, kept } = await run({
      ...inputs,
      B1: { value: "", formula: 'IF(A1>9,WETEND.DOSE.TARGET(A1,A2),"")' },
      B2: { value: "none", formula: 'IFERROR(B1/2-1,"none")' },
      B3: { value: false, formula: "ISBLANK(B1)" },
      B4: { value: 0, formula: "COUNT(B1)" },
    });
    expect(kept).toEqual([]);
    expect(["B1", "B2", "B3", "B4"].map((address) => at(book, address)?.value)).toEqual([
      "",
      "none",
      false,
      0,
    ]);
    expect(at(book, "B1")?.formula).toBe('IF(A1>9,WETEND.DOSE.TARGET(A1,A2),"")');
  });

  test("are computed where they have no value yet", async () => {
    const { book, kept } = await run({
      ...inputs,
      B1: dose(null),
      B2: { value: null, formula: "B1*2" },
      B3: { value: 5, formula: "B1-3.125" },
    });
    expect(at(book, "B1")?.value).toBe(8.125);
    expect(at(book, "B2")?.value).toBe(16.25);
    expect(at(book, "B3")?.value).toBe(5);
    expect(kept).toEqual([]);
  });

  test("and those that read them come alive again after a program that did not know them", async () => {
    const unknown = { error: "#NAME?" };
    const { book, kept } = await run({
      ...inputs,
      A3: { value: unknown, formula: "A2*1" },
      B1: { value: unknown, formula: "WETEND.DOSE.TARGET(A1,A3)" },
      B2: { value: unknown, formula: "B1*2" },
    });
    expect([at(book, "A3"), at(book, "B1"), at(book, "B2")].map((cell) => cell?.value)).toEqual([
      0.8, 8.125, 16.25,
    ]);
    expect(kept).toEqual([]);
  });

  test("are found behind names", async () => {
    const { book, ours } = await run({ ...inputs, B1: { value: 1, formula: "target*2" } }, false, [
      { name: "target", formula: "WETEND.DOSE.TARGET(S!$A$1,S!$A$2)" },
    ]);
    expect(ours).toBe(1);
    expect(at(book, "B1")?.value).toBe(16.25);
  });

  test("fill more cells than before, and their readers follow", async () => {
    const ladder = 'WETEND.TRIAL.LADDER(0,8,A1,"even",FALSE)';
    const { book, kept } = await run({
      A1: { value: 3 },
      B1: { value: 0, formula: ladder, spill: { rows: 2, columns: 1 } },
      B2: { value: 8, spilled: true },
      C1: { value: 8, formula: "SUM(B1#)" },
    });
    expect(at(book, "B1")?.spill).toEqual({ rows: 3, columns: 1 });
    expect([at(book, "B2"), at(book, "B3")].map((cell) => cell?.value)).toEqual([4, 8]);
    expect(at(book, "C1")).toEqual({ value: 12, formula: "SUM(B1#)" });
    expect(kept).toEqual([]);
  });

  test("that are entered as plain formulas show the first of many values, and it is said", async () => {
    const formula = 'WETEND.TRIAL.LADDER(1,8,3,"even",FALSE)';
    const { book, cramped, failures } = await run({
      B1: { value: null, formula },
      B2: { value: "occupied" },
    });
    expect(at(book, "B1")).toEqual({ value: 1, formula });
    expect(at(book, "B2")?.value).toBe("occupied");
    expect(cramped).toEqual([{ sheet: "S", address: "B1" }]);
    expect(failures).toEqual([]);
  });
});

describe("an array formula over a fixed range", () => {
  const over = (formula: string, rows: number, columns = 1) =>
    run({ ...inputs, B1: { value: null, formula, spill: { rows, columns }, fixed: true } });
  const column = (book: Book, rows: number) =>
    Array.from({ length: rows }, (_, row) => at(book, `B${row + 1}`)?.value);
  const missing = { error: "#N/A" };

  test("shows #N/A where its answer ends, and no cell has failed there", async () => {
    const { book, failures } = await over('WETEND.TRIAL.LADDER(1,8,2,"even",FALSE)', 4);
    expect(column(book, 4)).toEqual([1, 8, missing, missing]);
    expect(failures).toEqual([]);
  });

  test("repeats a single value", async () => {
    const { book, failures } = await over("WETEND.DOSE.TARGET(A1,A2)", 3);
    expect(column(book, 3)).toEqual([8.125, 8.125, 8.125]);
    expect(failures).toEqual([]);
  });

  test("fails in each cell of an answer that fails", async () => {
    const { failures } = await over("WETEND.DOSE.TARGET({6.5;7},{0.8;1.4})", 3);
    expect(failures.map(({ address, error }) => [address, error])).toEqual([["B2", "#VALUE!"]]);
  });
});

describe("cells of ours that fail are named with a sentence", () => {
  test.each([
    ["a bad input", "WETEND.DOSE.TARGET(6.5,1.4)", "#VALUE!", /1\.4.*fraction/],
    [
      "a function of another version",
      "WETEND.DOSE.FUTURE(1)",
      "#NAME?",
      /^WETEND\.DOSE\.FUTURE is not/,
    ],
    ["an error that comes in", "WETEND.DOSE.TARGET(1/0,0.8)", "#DIV/0!", /division by zero/],
    ["a text that is reckoned with", 'WETEND.DOSE.TARGET("six"*2,0.8)', "#VALUE!", /text stands/],
    ["cells that are not there", "WETEND.DOSE.TARGET(INDEX(A1:A2,9),0.8)", "#REF!", /not there/],
    ["an answer that is not there", "WETEND.DOSE.TARGET(NA(),0.8)", "#N/A", /gives this error/],
  ])("%s", async (_, formula, error, message) => {
    const { failures } = await run({ B1: { value: 1, formula } });
    expect(failures).toMatchObject([{ sheet: "S", address: "B1", error, formula }]);
    expect(failures[0]?.message).toMatch(message);
  });

  test("an answer that finds no room", async () => {
    const { failures } = await run({
      B1: { value: 0, formula: "WETEND.TRIAL.LADDER(1,8,2)", spill: { rows: 1, columns: 1 } },
      B2: { value: "occupied" },
    });
    expect(failures).toMatchObject([{ address: "B1", error: "#SPILL!" }]);
    expect(failures[0]?.message).toMatch(/are not empty/);
  });
});

describe("native formulas that come out otherwise than the file holds", () => {
  const stale = {
    A1: { value: 6.5 },
    A2: { value: 0.8 },
    B1: { value: 7, formula: "A1*1" },
    B2: { value: 14, formula: "B1*2" },
    C1: { value: 0, formula: "WETEND.DOSE.TARGET(B1,A2)" },
  };

  test("keep their value, and only where the difference starts is named", async () => {
    const { book, kept } = await run(stale);
    expect(kept).toEqual([{ sheet: "S", address: "B1", formula: "A1*1", saved: 7, computed: 6.5 }]);
    expect(at(book, "B1")).toEqual(stale.B1);
    expect(at(book, "B2")).toEqual(stale.B2);
    expect(at(book, "C1")?.value).toBe(8.75);
  });

  test("are written when all are asked for", async () => {
    const { book, kept } = await run(stale, true);
    expect(kept).toEqual([]);
    expect(at(book, "B1")?.value).toBe(6.5);
    expect(at(book, "B2")?.value).toBe(13);
    expect(at(book, "C1")?.value).toBe(8.125);
  });

  test.each([false, true])(
    "keep it, too, where the function is unknown here (all: %s)",
    async (all) => {
      const { book, kept } = await run(
        {
          B1: { value: 42, formula: "UNHEARD.OF(1)" },
          B2: { value: 43, formula: "B1+1" },
          C1: { value: 0, formula: "WETEND.DOSE.TARGET(B2,0.5)" },
        },
        all,
      );
      expect(kept).toMatchObject([{ address: "B1", saved: 42, computed: { error: "#NAME?" } }]);
      expect(at(book, "B2")?.value).toBe(43);
      expect(at(book, "C1")?.value).toBe(86);
    },
  );

  test("say nothing where they look at the clock or at chance: these keep their value", async () => {
    const fleeting = {
      B1: { value: 45000, formula: "TODAY()" },
      B2: { value: 45001, formula: "B1+1" },
      B3: { value: 0.5, formula: "RAND()" },
    };
    const { book, kept } = await run({ ...fleeting, C1: dose(0), ...inputs });
    expect(kept).toEqual([]);
    for (const [address, cell] of Object.entries(fleeting)) expect(at(book, address)).toEqual(cell);
  });

  test("are not blamed for what they read from cells of ours without a value", async () => {
    const { book, kept } = await run({
      ...inputs,
      B1: dose(null),
      B2: { value: 1, formula: "B1*2" },
    });
    expect(kept).toEqual([]);
    expect(at(book, "B2")?.value).toBe(16.25);
  });

  test("that read one another in a circle are all kept", async () => {
    const { kept } = await run({
      B1: { value: 1, formula: "B2+1" },
      B2: { value: 7, formula: "B1+1" },
    });
    expect(kept.length).toBeGreaterThan(0);
  });
});
