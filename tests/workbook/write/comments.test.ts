import { expect, test } from "vitest";
import { parseArea } from "../../../src/workbook/address";
import type { Book } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";

const names = functionNames([]);

test("comments are written anew at their cells, one of any length", async () => {
  const comments = [
    { area: parseArea("B2"), author: "Shift A", text: "7 & <more>,\nby hand", id: "1" },
    { area: parseArea("B3"), author: "Lab & Co", text: "dry", id: "3" },
    { area: parseArea("XFD9"), text: "a".repeat(40_000), id: "2" },
  ];
  const book: Book = {
    sheets: [
      { name: "Plain", cells: {} },
      { name: "Log", cells: {}, comments },
    ],
    definedNames: [],
    tables: [],
    styles: {},
  };
  const bytes = await writeWorkbook(book, names);
  const { sheets } = (await readWorkbook(bytes, names)).book;
  expect(sheets[0]?.comments).toBeUndefined();
  expect(
    sheets[1]?.comments?.map(({ area, author, text }) => [
      area,
      author,
      text.slice(0, 30),
      text.length,
    ]),
  ).toEqual([
    // biome-ignore format: a line
    [parseArea("B2"), "Shift A", "7 & <more>,\nby hand", 19],
    [parseArea("B3"), "Lab & Co", "dry", 3],
    [parseArea("XFD9"), undefined, "a".repeat(30), 32_700],
  ]);
});
