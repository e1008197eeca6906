import { describe, expect, test } from "vitest";
import { cellAt, type Sheet } from "../../../src/workbook/book";
import { layOut } from "../../../src/workbook/layout/lay-out";
import type { Part, Plan } from "../../../src/workbook/plan";
import { samplePlan } from "../sample-plan";

const planOf = (...parts: Part[]): Plan => ({
  id: "x",
  title: "X",
  question: "?",
  sheets: [{ name: "S", parts }],
});

const formulaAt = (sheet: Sheet | undefined, row: number, column: number) =>
  sheet && cellAt(sheet, row, column)?.formula;

describe("a plan laid out", () => {
  const book = layOut(samplePlan);
  const [about, log] = book.sheets;

  test("names its inputs and results for the whole workbook", () => {
    expect(book.definedNames).toContainEqual({ name: "wanted", formula: "About!$B$4" });
    expect(book.definedNames).toContainEqual({ name: "averageDose", formula: "About!$B$6" });
  });

  test("speaks of tables by their columns and of spills by their mark", () => {
    expect(formulaAt(log, 3, 4)).toBe(
      "WETEND.DOSE.TARGET(wanted,log[[Overall retention (fraction)]])",
    );
    expect(formulaAt(log, 3, 2)).toBe("100*(1-log[[#This Row],[Overall retention (fraction)]])");
    expect(formulaAt(about, 5, 1)).toBe("AVERAGE('Mill log'!$E$4#)");
    expect(formulaAt(log, 3, 7)).toBe("MAX($E$4#)");
  });

  test("marks formulas outside tables as able to spill, and those in tables as plain", () => {
    expect(log && cellAt(log, 3, 4)?.spill).toEqual({ rows: 1, columns: 1 });
    expect(log && cellAt(log, 3, 2)).not.toHaveProperty("spill");
  });

  test("keeps the room of a spill free and formatted", () => {
    expect(log && cellAt(log, 42, 4)).toEqual({ value: null, style: "result 0.00" });
    expect(book.styles["result 0.00"]?.format).toBe("0.00");
  });

  test("turns what may be typed into a validation with its message", () => {
    expect(about?.entryRules[0]).toEqual({
      area: { row: 3, column: 1, rows: 1, columns: 1 },
      type: "decimal",
      comparison: "between",
      from: "0.1",
      to: "50",
      blank: true,
      refusal: { title: "Please check", text: "Give a number from 0.1 to 50 (kg/t)." },
      prompt: {
        title: "Starch wanted in the sheet",
        text: "Oven-dry starch per tonne of oven-dry furnish.",
      },
    });
  });

  test("draws the chart from the cells that the symbols name", () => {
    expect(log?.charts[0]?.series[0]).toMatchObject({
      values: { sheet: "Mill log", area: { row: 3, column: 4, rows: 40, columns: 1 } },
      x: { sheet: "Mill log", area: { row: 3, column: 0, rows: 4, columns: 1 } },
    });
  });

  test("takes other names where the workbook has these already", () => {
    const second = layOut(samplePlan, {
      sheets: new Set(["about", "mill log"]),
      words: new Set(["wanted", "log"]),
    });
    expect(second.sheets.map(({ name }) => name)).toEqual(["About 2", "Mill log 2"]);
    expect(second.tables[0]?.name).toBe("log_2");
    expect(formulaAt(second.sheets[1], 3, 4)).toBe(
      "WETEND.DOSE.TARGET(wanted_2,log_2[[Overall retention (fraction)]])",
    );
    expect(formulaAt(second.sheets[0], 5, 1)).toBe("AVERAGE('Mill log 2'!$E$4#)");
    expect(second.sheets[0]?.formats[0]?.formula).toBe("AND(ISNUMBER(B6),B6>wanted_2*1.4)");
  });
});

describe("symbols", () => {
  const block: Part = {
    kind: "block",
    at: "B2",
    name: "grid",
    rows: [
      [1, 2],
      [3, 4],
    ],
  };
  const formula = (text: string): Part => ({ kind: "block", at: "H9", rows: [[`=${text}`]] });
  const laid = (text: string) => formulaAt(layOut(planOf(block, formula(text))).sheets[0], 8, 7);

  test.each([
    ["SUM({grid})", "SUM($B$2:$C$3)"],
    ["SUM({grid[2]})", "SUM(INDEX($B$2:$C$3,0,2))"],
    ["{grid[2,1]}*2", "INDEX($B$2:$C$3,2,1)*2"],
    ['"{grid}"&SUM({1,2})', '"{grid}"&SUM({1,2})'],
  ])("%s becomes %s", (text, expected) => expect(laid(text)).toBe(expected));

  test("escape what a table's header may not hold plainly", () => {
    const table: Part = {
      kind: "table",
      at: "A1",
      name: "furnish",
      columns: [{ key: "share", header: "Share [dry]", values: [0.5] }],
    };
    const sheet = layOut(planOf(table, formula("SUM({furnish.share})"))).sheets[0];
    expect(formulaAt(sheet, 8, 7)).toBe("SUM(furnish[[Share '[dry']]])");
  });
});

describe("rules and validations", () => {
  const table: Part = {
    kind: "table",
    at: "A1",
    name: "places",
    columns: [
      { key: "place", header: "Place", values: ["chest", "pump"] },
      {
        key: "position",
        header: "Position",
        values: [1, 2],
        allow: {
          whole: {
            from: 1,
            to: { formula: "ROWS({places})+MAX({places.position})", words: "the last position" },
          },
        },
      },
    ],
  };
  const spill: Part = {
    kind: "spill",
    at: "D2",
    name: "doubled",
    formula: "2*{places.position}",
    room: { rows: 5, columns: 1 },
  };
  const rule: Part = {
    kind: "rule",
    on: "{doubled}",
    when: { formula: "{cell}=MAX({doubled})+SUM({places.position})" },
    look: "good",
  };
  const [sheet] = layOut(planOf(table, spill, rule)).sheets;

  test("name the cells of tables and spills, since a spreadsheet takes nothing else there", () => {
    expect(sheet?.formats[0]?.formula).toBe("D2=MAX($D$2:$D$6)+SUM($B$2:$B$3)");
    expect(sheet?.entryRules[0]?.to).toBe("ROWS($A$2:$B$3)+MAX($B$2:$B$3)");
  });

  test("say in words where a limit is a formula", () => {
    expect(sheet?.entryRules[0]?.refusal?.text).toBe(
      "Give a whole number from 1 to the last position.",
    );
  });
});

describe("the look of a part", () => {
  const widths = { A: 20, B: 10 };
  const laid = (part: Part) => {
    const plan = planOf(part);
    const book = layOut({ ...plan, sheets: [{ name: "S", widths, parts: [part] }] });
    const sheet = book.sheets[0] as (typeof book.sheets)[number];
    const styleAt = (row: number, column: number) =>
      book.styles[cellAt(sheet, row, column)?.style ?? ""];
    return { sheet, styleAt };
  };

  test.each([
    [undefined, "a text of more than twenty letters", undefined],
    [1, "a text of more than twenty letters", 30],
    [2, "a text of more than twenty letters", 30],
    [1, "short", 15],
    [1, "has room if narrow..", 30],
    [1, "words-that-are-long do-not-share-lines with-others-here", 45],
  ])("a text with span %s wraps within it: %s", (span, text, height) => {
    const { sheet, styleAt } = laid({ kind: "text", at: "A1", text, ...(span ? { span } : {}) });
    expect(sheet.rowHeights?.[0]).toBe(height);
    expect(styleAt(0, 0)?.wrap ?? false).toBe(span !== undefined);
  });

  test("headers stand on the side of what is below them", () => {
    const { styleAt } = laid({
      kind: "table",
      at: "A1",
      name: "prices",
      columns: [
        { key: "name", header: "Name", values: ["starch"] },
        { key: "price", header: "Price", values: [0.78], format: "0.00" },
      ],
    });
    expect(styleAt(0, 0)?.align).toBeUndefined();
    expect(styleAt(0, 1)?.align).toBe("right");
  });
});

describe("a plan that is wrong is refused", () => {
  const line = (name: string, at = "A1"): Part => ({
    kind: "input",
    at,
    name,
    label: "x",
    unit: "",
    value: 1,
  });
  test.each([
    ["two parts in one cell", planOf(line("dose"), line("price", "B1")), /meet at B1/],
    ["two parts of one name", planOf(line("dose"), line("dose", "A2")), /named "dose"/],
    ["a symbol that is a cell's address", planOf(line("ds1")), /"ds1" cannot be a symbol/],
    [
      "a symbol that nothing has",
      planOf({ kind: "block", at: "A1", rows: [["={missing}"]] }),
      /no part named "missing"/,
    ],
    [
      "a sheet's name that no spreadsheet takes",
      { ...planOf(), sheets: [{ name: "a/b", parts: [] }] },
      /cannot be the name of a sheet/,
    ],
  ])("%s", (_, plan, message) => expect(() => layOut(plan)).toThrow(message));
});
