import { describe, expect, test } from "vitest";
import { blockAt, type SeenSheet } from "../../../src/workbench/sorting/block";
import { areaAddress, parseAddress, parseArea } from "../../../src/workbook/address";
import type { Table } from "../../../src/workbook/book";

type Written = number | string | null;

/** A text that begins with "=" is a formula that gives 0. */
function sheet(lines: readonly (readonly Written[])[], more: Partial<SeenSheet> = {}): SeenSheet {
  const cells = new Map(
    lines.map((line, row) => [
      row,
      new Map(
        line.flatMap((written, column) => {
          if (written === null) return [];
          const isFormula = typeof written === "string" && written.startsWith("=");
          const cell = isFormula ? { value: 0, formula: written.slice(1) } : { value: written };
          return [[column, cell] as const];
        }),
      ),
    ]),
  );
  return { name: "Log", cells, tables: [], frozenRows: 0, isBold: () => false, ...more };
}

function at(seen: SeenSheet, selected: string, cell = selected.split(":")[0] as string) {
  const block = blockAt(seen, parseArea(selected), parseAddress(cell));
  return block && [areaAddress(block.area), block.title];
}

const log: Written[][] = [
  ["Readings", null, null],
  [null, null, null],
  ["Day", "Dose", "Note"],
  [null, "kg/t", null],
  [45_000, 6.5, "fine"],
  [45_001, null, null],
  [45_002, 7.1, "foam"],
  [null, null, null],
  [1, 2, 3],
];

describe("the block around a cell", () => {
  test("ends at blank lines, and goes on over single blank cells", () => {
    expect(at(sheet(log), "B5")).toEqual(["A5:C7", "Dose"]);
  });

  test("is the same from its head", () => {
    expect(at(sheet(log), "A3")).toEqual(["A5:C7", "Day"]);
    expect(at(sheet(log), "B4")).toEqual(["A5:C7", "Dose"]);
  });

  test("is not there at a blank cell that none touches", () => {
    expect(at(sheet(log), "F20")).toBeUndefined();
  });

  test("keeps rows whole, also where one column is selected, and takes only the rows that are", () => {
    expect(at(sheet(log), "B5:B6")).toEqual(["A5:C6", "Dose"]);
    expect(at(sheet(log.slice(2, 7)), "B1:B1048576")).toEqual(["A3:C5", "Dose"]);
  });

  test("of ten thousand rows is found at once", () => {
    const long = Array.from({ length: 10_000 }, (_, row) => [row, `text ${row}`, row / 2]);
    expect(at(sheet([["Day", "Note", "Half"], ...long]), "C5000")).toEqual(["A2:C10001", "Half"]);
  });
});

describe("what heads a block", () => {
  test("is nothing where the first line holds a number as the others do", () => {
    expect(at(sheet([[1, "a"], [2, "b"]]), "A1")).toEqual(["A1:B2", undefined]); // biome-ignore format: a sheet
  });

  test("is no first row whose reading is missing", () => {
    expect(at(sheet([["a", null], ["b", 2], ["c", 3]]), "B2")).toEqual(["A1:B3", undefined]); // biome-ignore format: a sheet
  });

  test("is a title above the names, too", () => {
    const lines = [["All runs", null], ["Run", "Dose"], ["a", 1], ["b", 2]]; // biome-ignore format: a sheet
    expect(at(sheet(lines), "B3")).toEqual(["A3:B4", "Dose"]);
  });

  test("is what stays in view, whatever it holds", () => {
    const lines = [["Grade", 2024, 2025], ["a", 1, 2], ["b", 3, 4]]; // biome-ignore format: a sheet
    expect(at(sheet(lines), "B2")).toEqual(["A1:C3", undefined]);
    expect(at(sheet(lines, { frozenRows: 1 }), "A2")).toEqual(["A2:C3", "Grade"]);
  });

  test("is a bold line over words alone", () => {
    const words = [["Run", "Grade"], ["b", "liner"], ["a", "medium"]]; // biome-ignore format: a sheet
    expect(at(sheet(words), "A2")).toEqual(["A1:B3", undefined]);
    expect(at(sheet(words, { isBold: (row) => row === 0 }), "A2")).toEqual(["A2:B3", "Run"]);
    expect(at(sheet(words, { isBold: () => true }), "A2")).toEqual(["A1:B3", undefined]);
  });
});

describe("what stands below a block", () => {
  const rows = [["Lot", "Mass", "Price"], ["a", 2, 5], ["b", 3, 4]]; // biome-ignore format: a sheet

  test("is left where it is when it sums up the column", () => {
    const totals = [["All", "=SUM(B2:B3)", null], ["Mean", null, "=AVERAGE($C$2:$C$3)"]]; // biome-ignore format: a sheet
    expect(at(sheet([...rows, ...totals]), "B2")).toEqual(["A2:C3", "Mass"]);
  });

  test("is a row like the others when each computes from many", () => {
    const shares = rows.map((row, index) => [
      ...row,
      index === 0 ? "Share" : `=B${index + 1}/SUM(B$2:B$3)`,
    ]);
    expect(at(sheet(shares), "D2")).toEqual(["A2:D3", "Share"]);
    const balance = rows.map((row, index) => [...row, index === 0 ? "Sum" : `=D${index}+B2`]);
    expect(at(sheet(balance), "D2")).toEqual(["A2:D3", "Sum"]);
  });
});

describe("a table", () => {
  const table: Table = {
    name: "Runs",
    sheet: "Log",
    area: parseArea("A1:B4"),
    columns: ["Run", "Dose"],
    headerRow: true,
    totalsRow: true,
  };
  const lines = [["Run", "Dose", "beside"], ["b", 1, 9], ["a", 2, 8], ["All", 3, 7]]; // biome-ignore format: a sheet

  test("is sorted between its header and its totals, from wherever in it", () => {
    for (const cell of ["B1", "B3", "B4", "B2:B3"])
      expect(at(sheet(lines, { tables: [table] }), cell)).toEqual(["A2:B3", "Dose"]);
  });

  test("is no part of the block beside it", () => {
    expect(at(sheet(lines, { tables: [table] }), "C3")).toEqual(["C2:C4", "beside"]);
  });
});
