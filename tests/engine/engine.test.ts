import { describe, expect, test } from "vitest";
import { openEngine } from "../../src/engine/node";
import { probe } from "./probe";
import { book, cell, sheet, shown } from "./sheet";

const engine = openEngine(probe);
const compute = (content: Parameters<typeof sheet>[1]) =>
  engine.recalculate(book([sheet("Mill log", content)]));

describe("what a function is handed", () => {
  test.each([
    ["a number", "2", [[[2]], null]],
    ["an omitted argument", "", [null, null]],
    ["a cell", "A1", [[[1.5]], null]],
    [
      "a range with a blank, a Boolean and an error",
      "A1:D1",
      [[[1.5, null, true, "error #DIV/0!"]], null],
    ],
    [
      "an array",
      "{1,2;3,4}",
      [
        [
          [1, 2],
          [3, 4],
        ],
        null,
      ],
    ],
    ["a computed array", "A1:A2*2", [[[3], [4]], null]],
    ["a single value where one is meant", 'A1,"kg/t"', [[[1.5]], "kg/t"]],
    ["a single cell where one is meant", "A1,C1", [[[1.5]], true]],
    ["a blank cell where one is meant", "A1,B1", [[[1.5]], null]],
    ["an error that was computed on the way", "A1/0", [[["error #DIV/0!"]], null]],
    ["text that looks like an error of ours", '"#late"', [[["#late"]], null]],
  ])("%s", async (_, given, seen) => {
    const result = await compute({
      A1: 1.5,
      A2: 2,
      C1: true,
      D1: "=1/0",
      F4: `=WETEND.PROBE.SEEN(${given})`,
    });
    expect(JSON.parse(String(shown(result, "F4")))).toEqual([...seen, "'Mill log'!F4"]);
  });

  test("a whole column ends where nothing stands in it any more", async () => {
    const result = await compute({ A1: 1, A3: 3, C1: "=WETEND.PROBE.SEEN(A:A)" });
    expect(JSON.parse(String(shown(result, "C1")))[0]).toEqual([[1], [null], [3]]);
  });

  test("a range where one value is meant is refused by name", async () => {
    const result = await compute({ A1: 1, A2: 2, C1: "=WETEND.PROBE.SEEN(A1,A1:A2)" });
    expect(cell(result, "C1")?.value).toEqual({
      error: "#VALUE!",
      message: "one takes a single cell, not a range.",
    });
  });

  test("an argument too many is refused", async () => {
    const result = await compute({ C1: "=WETEND.PROBE.SAME(1,2)" });
    expect(cell(result, "C1")?.value).toEqual({
      error: "#VALUE!",
      message: "WETEND.PROBE.SAME takes 1 argument at most.",
    });
  });
});

describe("what becomes of an answer", () => {
  test("a range spills, and is marked so", async () => {
    const result = await compute({ A1: 1, A2: "two", C1: "=WETEND.PROBE.SAME(A1:A2)" });
    expect(cell(result, "C1")).toEqual({
      value: 1,
      formula: "WETEND.PROBE.SAME(A1:A2)",
      spill: { rows: 2, columns: 1 },
    });
    expect(cell(result, "C2")).toEqual({ value: "two", spilled: true });
  });

  test("numbers keep every digit", async () => {
    const result = await compute({ A1: 0.1 + 0.2, B1: "=WETEND.PROBE.SAME(A1)", C1: "=1/3" });
    expect(shown(result, "B1")).toBe(0.30000000000000004);
    expect(shown(result, "C1")).toBe(1 / 3);
  });

  test("an answer that finds no room says so and spoils nothing", async () => {
    const result = await compute({ A1: 1, A2: 2, C1: "=WETEND.PROBE.SAME(A1:A2)", C2: "mine" });
    expect(shown(result, "C1")).toBe("#SPILL!");
    expect(shown(result, "C2")).toBe("mine");
  });

  test("an answer longer than the rows in use still finds room", async () => {
    const result = await compute({ A1: "=SEQUENCE(5000)", B1: "=SUM(A1:A5000)" });
    expect(shown(result, "A5000")).toBe(5000);
    expect(shown(result, "B1")).toBe(12502500);
  });

  test.each([
    ["ragged", "#VALUE!", "The function gave back rows of unequal length."],
    ["empty", "#VALUE!", "The function gave back rows of unequal length."],
    ["object", "#VALUE!", "The function gave back something that no cell can show."],
    ["no", "#VALUE!", "The function gave back something that no cell can show."],
    ["bug", "#VALUE!", "WETEND.PROBE.ODD broke off: undefined_name is not defined"],
  ])("a faulty answer (%s) fails in its own cell", async (kind, error, message) => {
    const result = await compute({ A1: `=WETEND.PROBE.ODD("${kind}")`, A2: "=1+1" });
    expect(cell(result, "A1")?.value).toEqual({ error, message });
    expect(shown(result, "A2")).toBe(2);
  });
});

describe("why a cell fails", () => {
  test("the message stands in the cell and in the list", async () => {
    const result = await compute({ A1: 7, B2: "=WETEND.PROBE.REFUSE(A1)" });
    const failed = { error: "#N/A", message: "Nothing answers 7." };
    expect(cell(result, "B2")?.value).toEqual(failed);
    expect(result.failures).toEqual([
      { sheet: "Mill log", address: "B2", formula: "WETEND.PROBE.REFUSE(A1)", ...failed },
    ]);
  });

  test("each spilled cell has its own message", async () => {
    const result = await compute({ A1: 1, A2: -1, A3: 0, C1: "=WETEND.PROBE.POSITIVE(A1:A3)" });
    expect(result.failures.map(({ address, message }) => [address, message])).toEqual([
      ["C2", "The value is -1. Give one above 0."],
      ["C3", "The value is 0. Give one above 0."],
    ]);
  });

  test("an error that a computed argument brings is not explained by another cell's message", async () => {
    const cells = { A1: -1, A2: "text", C1: "=WETEND.PROBE.POSITIVE(2*A1:A2)" };
    const result = await compute(cells);
    expect(result.failures.map(({ address, message }) => [address, message])).toEqual([
      ["C1", "The value is -2. Give one above 0."],
      ["C2", 'A2 is the text "text". Give a number.'],
    ]);
  });

  test("a cell below says where the error comes from, however far", async () => {
    const result = await engine.recalculate(
      book([
        sheet("Input", { A1: 1, A2: -1, B1: "=WETEND.PROBE.POSITIVE(A1:A2)", C1: "=1/0" }),
        sheet("Result", {
          A1: "=WETEND.PROBE.SAME(Input!B2)",
          A2: "=WETEND.PROBE.SAME(A1)",
          A3: "=WETEND.PROBE.SAME(Input!C1)",
        }),
      ]),
    );
    const messages = ["A1", "A2", "A3"].map((at) => cell(result, at, "Result")?.value);
    expect(messages).toEqual([
      { error: "#VALUE!", message: "From Input!B2: The value is -1. Give one above 0." },
      { error: "#VALUE!", message: "From Input!B2: The value is -1. Give one above 0." },
      { error: "#DIV/0!", message: "The error comes from Input!C1." },
    ]);
  });

  test("an error that the formula itself catches is no failure", async () => {
    const result = await compute({ A1: '=IFERROR(WETEND.PROBE.REFUSE(1),"none")' });
    expect(result.failures).toEqual([]);
    expect(shown(result, "A1")).toBe("none");
  });

  test("a function that nobody knows is #NAME?", async () => {
    const result = await compute({ A1: "=WETEND.PROBE.NONE(1)" });
    expect(result.failures).toMatchObject([{ address: "A1", error: "#NAME?" }]);
  });
});
