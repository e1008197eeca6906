import { describe, expect, test } from "vitest";
import { openEngine } from "../../src/engine/node";
import { withTableNames } from "../../src/engine/structured";
import type { Book, Table } from "../../src/workbook/book";
import { probe } from "./probe";
import { book, cell, sheet, shown } from "./sheet";

const engine = openEngine(probe);

describe("answers that spill", () => {
  test("are followed to the end of a chain in which each reads a part of the one before", async () => {
    const result = await engine.recalculate(
      book([
        sheet("S", {
          A1: "=B2*1",
          B1: "=C2:C3*1",
          C1: "=D2:D4*1",
          D1: "=E2:E5*1",
          E1: "=F2:F6*1",
          F1: "=SEQUENCE(7)",
          G1: "=SUM(B1:B2)",
        }),
      ]),
    );
    expect(shown(result, "A1")).toBe(6);
    expect(shown(result, "G1")).toBe(11);
  });

  test("are read as a whole by the mark #", async () => {
    const result = await engine.recalculate(
      book([
        sheet("My log", { A1: "=SEQUENCE(4)", C1: "=SUM(A1#)", D1: "=A1#*2", E1: "=ROWS(C1#)" }),
        sheet("T", { A1: "=MAX('My log'!$A$1#)" }),
      ]),
    );
    expect(shown(result, "C1")).toBe(10);
    expect(shown(result, "D4")).toBe(8);
    expect(shown(result, "E1")).toBe(1);
    expect(shown(result, "A1", "T")).toBe(4);
  });

  test("leave nothing behind of an earlier, longer answer", async () => {
    const long = await engine.recalculate(book([sheet("S", { A1: 4, B1: "=SEQUENCE(A1)" })]));
    const [before] = long.book.sheets;
    const cells = { ...before?.cells, 0: { ...before?.cells[0], 0: { value: 2 } } };
    const short = await engine.recalculate(book([{ name: "S", cells }]));
    expect([1, 2, 3].map((row) => short.book.sheets[0]?.cells[row]?.[1]?.value)).toEqual([
      2,
      undefined,
      undefined,
    ]);
  });
});

describe("names", () => {
  const named = (formula: string, definedNames: Book["definedNames"]) =>
    engine.recalculate(
      book([sheet("Log", { A1: 2, A2: 3 }), sheet("Sum up", { A1: `=${formula}` })], {
        definedNames,
      }),
    );

  test.each([
    ["a cell", "dose*2", "Log!$A$1", 4],
    ["a range", "SUM(dose)", "Log!$A$1:$A$2", 5],
    ["a number", "dose*2", "0.25", 0.5],
    ["a sum, which stays whole inside a product", "dose*2", "SUM(Log!$A$1:$A$2)+1", 12],
    ["a sum of cells, which stays whole behind a sign", "1-dose", "Log!$A$1+Log!$A$2", -4],
  ])("stand for %s", async (_, formula, means, value) => {
    const result = await named(formula, [{ name: "dose", formula: means }]);
    expect(shown(result, "A1", "Sum up")).toBe(value);
  });

  describe("of one sheet", () => {
    const definedNames = [
      { name: "dose", formula: "Log!$A$1", sheet: "Log" },
      { name: "dose", formula: "Log!$A$2+0.5", sheet: "Sum up" },
      { name: "rate", formula: "0.25" },
      { name: "Rate", formula: "0.5", sheet: "Sum up" },
      { name: "twice", formula: "dose*2", sheet: "Sum up" },
      { name: "endless", formula: "endless", sheet: "Log" },
    ];

    test.each([
      ["are known there", "Sum up", "dose", 3.5],
      ["stay whole inside a product", "Sum up", "-dose^2*2", 24.5],
      ["mean what they mean on each sheet", "Log", "dose", 2],
      ["come before those of the workbook", "Sum up", "rate*4", 2],
      ["leave those of the workbook to other sheets", "Log", "RATE*4", 1],
      ["are reached from elsewhere with their sheet", "Log", "'Sum up'!dose+Log!dose", 5.5],
      ["may use one another", "Sum up", "twice", 7],
      ["are not known elsewhere", "Log", "twice", "#NAME?"],
      ["are not known in a text", "Log", '"twice"', "twice"],
      ["may not go in a circle", "Log", "endless", "#NAME?"],
    ])("%s", async (_, home, formula, value) => {
      const sheets = ["Log", "Sum up"].map((name) =>
        sheet(name, {
          ...(name === "Log" && { A1: 2, A2: 3 }),
          ...(name === home && { C1: `=${formula}` }),
        }),
      );
      const result = await engine.recalculate(book(sheets, { definedNames }));
      expect(shown(result, "C1", home)).toBe(value);
      expect(cell(result, "C1", home)?.formula).toBe(formula);
    });
  });
});

describe("tables", () => {
  const columns = ["Day", "Dose (kg/t)", "COD, kg/d", "Share #1", "a [b]"];
  const inTable = async (formula: string) => {
    const result = await engine.recalculate(
      book(
        [
          sheet("Log", {
            B2: "Day",
            C2: "Dose (kg/t)",
            D2: "COD, kg/d",
            E2: "Share #1",
            F2: "a [b]",
            B3: 1,
            C3: 8,
            D3: 500,
            E3: 0.5,
            F3: 3,
            B4: 2,
            C4: 9,
            D4: 600,
            E4: 0.25,
            F4: 4,
            B5: "Total",
            C5: 17,
            H4: `=${formula}`,
          }),
        ],
        {
          tables: [
            {
              name: "Log_1",
              sheet: "Log",
              area: { row: 1, column: 1, rows: 4, columns: 5 },
              columns,
              headerRow: true,
              totalsRow: true,
            },
          ],
        },
      ),
    );
    return shown(result, "H4");
  };

  test.each([
    ["SUM(Log_1[Day])", 3],
    ["SUM(Log_1[Dose (kg/t)])", 17],
    ["SUM(Log_1[COD, kg/d])", 1100],
    ["SUM(Log_1[Share '#1])", 0.75],
    ["SUM(Log_1[a '[b']])", 7],
    ["SUM(log_1[day])", 3],
    ["SUM(Log_1[[Dose (kg/t)]:[COD, kg/d]])", 1117],
    ["COUNT(Log_1)", 10],
    ["COUNTA(Log_1[])", 10],
    ["ROWS(Log_1[#All])", 4],
    ["ROWS(Log_1[#Data])", 2],
    ["INDEX(Log_1[#Headers],1,2)", "Dose (kg/t)"],
    ["Log_1[[#Headers],[COD, kg/d]]", "COD, kg/d"],
    ["Log_1[[#Totals],[Dose (kg/t)]]", 17],
    ["SUM(Log_1[[#All],[Dose (kg/t)]])", 34],
    ["Log_1[[#This Row],[Dose (kg/t)]]*2", 18],
    ["SUM(Log_1[[#This Row],[Dose (kg/t)]:[COD, kg/d]])", 609],
    ["Log_1[@[Dose (kg/t)]]*2", 18],
    ["Log_1[@Day]", 2],
    ['"Log_1[Day]"', "Log_1[Day]"],
  ])("%s is %s", async (formula, value) => {
    expect(await inTable(formula)).toBe(value);
  });
});

test.each([
  ["Log[@Day]*[@[Dose (kg/t)]]", "Log[[#This Row],[Day]]*Log[[#This Row],[Dose (kg/t)]]"],
  [
    "SUM([@[Day]:[Dose (kg/t)]])/SUM([Day])",
    "SUM(Log[[#This Row],[Day]:[Dose (kg/t)]])/SUM(Log[Day])",
  ],
  ["COUNT(log[@])+ROWS(log)", "COUNT(Log[#This Row])+ROWS(Log)"],
  ['"[@Day]"&Other[@Day]', '"[@Day]"&Other[@Day]'],
])("%s is in a file %s", (typed, inFile) => {
  const table: Table = {
    name: "Log",
    sheet: "S",
    area: { row: 0, column: 0, rows: 3, columns: 2 },
    columns: ["Day", "Dose (kg/t)"],
    headerRow: true,
    totalsRow: false,
  };
  expect(withTableNames(typed, [table], { sheet: "S", row: 1, column: 1 })).toBe(inFile);
});

test("formulas reach other sheets by any name", async () => {
  const result = await engine.recalculate(
    book([
      sheet("Fen's log", { A1: 2 }),
      sheet("2026", { A1: 3 }),
      sheet("S", { A1: "='Fen''s log'!A1*'2026'!A1", B1: "=SUM('2026'!A:A)" }),
    ]),
  );
  expect(shown(result, "A1", "S")).toBe(6);
  expect(shown(result, "B1", "S")).toBe(3);
});

test("a formula with an open bracket spoils no other", async () => {
  const result = await engine.recalculate(
    book([
      sheet("S", { A1: 1, A2: 2, B1: "=SUM(A1[x", B2: "=SUM($A$1:$A$2)", B3: "=SUM(A1:A2)+[" }),
    ]),
  );
  expect(shown(result, "B2")).toBe(3);
  expect(result.failures.map(({ address }) => address)).toEqual(["B1", "B3"]);
});

describe("formulas that read their own answers", () => {
  const circle =
    "The formula reads its own answer, itself or through other cells. Break the circle.";
  const below = "The formula reads a cell that reads its own answer. Break that circle.";
  const messages = async (content: Parameters<typeof sheet>[1]) => {
    const { failures } = await engine.recalculate(book([sheet("S", content)]));
    return Object.fromEntries(failures.map(({ address, message }) => [address, message]));
  };

  test("fail, and so does what reads them; all else is computed", async () => {
    const content = { A1: "=B1+1", B1: "=A1+1", C1: "=B1*2", D1: 5, E1: "=D1+1", F1: "=F1" };
    expect(await messages(content)).toEqual({ A1: circle, B1: circle, C1: below, F1: circle });
    expect(shown(await engine.recalculate(book([sheet("S", content)])), "E1")).toBe(6);
  });

  test("are found through spilled cells, too", async () => {
    const found = await messages({ A1: "=SEQUENCE(3)*B1", B1: "=A2+1", C1: "=B1" });
    expect(found).toMatchObject({ A1: circle, B1: circle, C1: below });
  });
});

test("look-ups find their rows among computed, changed and blank cells", async () => {
  const result = await engine.recalculate(
    book([
      sheet("S", {
        A1: "=1+1",
        A2: "=C2",
        A3: '="Two"',
        A4: "=A2*2",
        C2: "=SUM(D1:D2)",
        D1: "=SEQUENCE(2)",
        F1: "=COUNTIF(A1:A5,2)",
        F2: '=COUNTIF(A1:A5,"two")',
        F3: '=COUNTIF(A1:A5,">2")',
        F4: "=MATCH(6,A1:A5,0)",
        F5: "=COUNTBLANK(A1:A5)",
        F6: "=SUMPRODUCT(--(A1:A5=0))",
        F7: "=VLOOKUP(3,A1:B5,1,FALSE)",
      }),
    ]),
  );
  expect([1, 2, 3, 4, 5, 6, 7].map((row) => shown(result, `F${row}`))).toEqual([
    1, 1, 2, 4, 1, 1, 3,
  ]);
});
