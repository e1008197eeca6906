import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { areaAddress, parseArea } from "../../../src/workbook/address";
import type { CellComment } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { commentMoves } from "../../../src/workbook/patch/comment-cells";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { commentedFile } from "../commented";

const names = functionNames([]);

const at = (cell: string, id = cell): CellComment => ({ area: parseArea(cell), text: "", id });
const nowhere = new Set<string>();

describe("of comments are told", () => {
  test.each([
    ["none that stayed", [at("A1")], [at("A1")], nowhere, [], false],
    [
      "the new cell",
      [at("A1"), at("B1")],
      [at("A1"), at("C9", "B1")],
      nowhere,
      [["B1", "C9"]],
      false,
    ],
    [
      "those that others were put over",
      [at("A1"), at("B1")],
      [at("B1", "A1")],
      nowhere,
      [
        ["A1", "B1"],
        ["B1", null],
      ],
      false,
    ],
    ["nothing of those on other sheets, which are left", [at("A1")], [], new Set(["A1"]), [], true],
  ] as const)("%s", (_, before, now, elsewhere, moves, left) => {
    // biome-ignore format: lines
    const found = commentMoves(before, now, elsewhere);
    expect([[...found.moves], found.left]).toEqual([moves, left]);
  });
});

test("a comment and a thread go to their new cells in all parts of the file, and one that is covered goes out of them", async () => {
  const opened = await readWorkbook(commentedFile(), names);
  const moves = new Map([
    ["B2", null],
    ["C3", "D9"],
    ["B4", "B2"],
  ]);
  const comments = new Map([["Log", moves]]);
  const { bytes } = await patchWorkbook(opened, new Map(), names, { comments });
  const [sheet] = (await readWorkbook(bytes, names)).book.sheets;
  expect(sheet?.comments?.map(({ area, text }) => [areaAddress(area), text])).toEqual([
    ["B2", "Lab: Is this dry?\nShift B: Yes."],
    ["D9", "estimated"],
  ]);
  const drawing = strFromU8(unzipSync(bytes)["xl/drawings/vmlDrawing1.vml"] as Uint8Array);
  expect(drawing.match(/<v:shape /g)).toHaveLength(2);
  expect(drawing).toContain("<br>");
  expect(drawing).toContain(
    "<x:Anchor>4, 15, 8, 2, 6, 15, 12, 4</x:Anchor><x:Row>8</x:Row><x:Column>3</x:Column>",
  );
  expect(drawing).toContain("<x:Row>1</x:Row><x:Column>1</x:Column>");
});

test("no part with comments is touched where none moved", async () => {
  const file = commentedFile();
  const opened = await readWorkbook(file, names);
  const comments = new Map([["Log", new Map()]]);
  const { bytes } = await patchWorkbook(opened, new Map(), names, { comments });
  expect(unzipSync(bytes)).toEqual(unzipSync(file));
});
