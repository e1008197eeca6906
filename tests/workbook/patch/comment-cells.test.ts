import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { areaAddress, parseArea } from "../../../src/workbook/address";
import type { CellComment } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { type CommentChanges, commentChanges } from "../../../src/workbook/patch/comment-changes";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { commentedFile } from "../commented";
import { rawParts, rawWorkbook, zipped } from "../raw-workbook";

const names = functionNames([]);

const at = (cell: string, more: Partial<CellComment> = {}): CellComment => ({
  area: parseArea(cell),
  text: "",
  id: cell,
  ...more,
});
const nowhere = new Set<string>();

const changed = (
  kept: readonly (readonly [string, { cell: string; text?: string } | null])[],
  added: readonly CellComment[] = [],
): CommentChanges => ({ kept: new Map(kept), added });

describe("of comments are told", () => {
  const dry = { thread: true } as const;
  test.each([
    ["none that stayed", [at("A1")], [at("A1")], nowhere, changed([]), false],
    [
      "the new cell",
      [at("A1"), at("B1")],
      [at("A1"), at("C9", { id: "B1" })],
      nowhere,
      changed([["B1", { cell: "C9" }]]),
      false,
    ],
    [
      "those that others were put over",
      [at("A1"), at("B1")],
      [at("B1", { id: "A1" })],
      nowhere,
      changed([
        ["A1", { cell: "B1" }],
        ["B1", null],
      ]),
      false,
    ],
    [
      "what they say now, also elsewhere",
      [at("A1"), at("B1")],
      [at("A1", { text: "wet" }), at("C1", { id: "B1", text: "dry" })],
      nowhere,
      changed([
        ["A1", { cell: "A1", text: "wet" }],
        ["B1", { cell: "C1", text: "dry" }],
      ]),
      false,
    ],
    [
      "those that are new, and that came from another sheet",
      [],
      [at("A1"), at("B1", { id: "of another", author: "Lab" })],
      nowhere,
      changed([], [at("A1"), at("B1", { id: "of another", author: "Lab" })]),
      false,
    ],
    [
      "those that are on another sheet now",
      [at("A1")],
      [],
      new Set(["A1"]),
      changed([["A1", null]]),
      false,
    ],
    [
      "nothing of threads on other sheets, which are left",
      [at("A1", dry)],
      [],
      new Set(["A1"]),
      changed([]),
      true,
    ],
    [
      "nothing of threads that came from another sheet",
      [],
      [at("A1", dry)],
      nowhere,
      changed([]),
      false,
    ],
  ] as const)("%s", (_, before, now, elsewhere, changes, left) => {
    expect(commentChanges(before, now, elsewhere)).toEqual({ changes, left });
  });
});

async function patched(file: Uint8Array, changes: CommentChanges, sheet = "Log") {
  const opened = await readWorkbook(file, names);
  const comments = new Map([[sheet, changes]]);
  const { bytes } = await patchWorkbook(opened, new Map(), names, { comments });
  const { book } = await readWorkbook(bytes, names);
  const found = book.sheets.find(({ name }) => name === sheet)?.comments ?? [];
  const parts = unzipSync(bytes);
  return {
    parts,
    said: found.map(({ area, author, text }) => [areaAddress(area), author, text]),
    part: (path: string) => strFromU8(parts[path] as Uint8Array),
  };
}

const partOf = (file: Uint8Array, path: string) => strFromU8(unzipSync(file)[path] as Uint8Array);

test("a comment and a thread go to their new cells in all parts of the file, and one that is covered goes out of them", async () => {
  const { said, part } = await patched(
    commentedFile(),
    changed([
      ["B2", null],
      ["C3", { cell: "D9" }],
      ["B4", { cell: "B2" }],
    ]),
  );
  expect(said).toEqual([
    ["B2", undefined, "Lab: Is this dry?\nShift B: Yes."],
    ["D9", undefined, "estimated"],
  ]);
  const drawing = part("xl/drawings/vmlDrawing1.vml");
  expect(drawing.match(/<v:shape /g)).toHaveLength(2);
  expect(drawing).toContain("<br>");
  expect(drawing).toContain(
    "<x:Anchor>4, 15, 8, 2, 6, 15, 12, 4</x:Anchor><x:Row>8</x:Row><x:Column>3</x:Column>",
  );
  expect(drawing).toContain("<x:Row>1</x:Row><x:Column>1</x:Column>");
});

test("no part with comments is touched where none changed", async () => {
  const file = commentedFile();
  const { parts } = await patched(file, changed([]));
  expect(parts).toEqual(unzipSync(file));
});

test("a comment that says something else keeps its author, the look of its first runs, and its box", async () => {
  const file = commentedFile();
  const { said, part, parts } = await patched(
    file,
    changed([
      ["B2", { cell: "B2", text: "Shift A:\n9 & <less>" }],
      ["C3", { cell: "D4", text: "weighed" }],
    ]),
  );
  expect(said).toContainEqual(["B2", "Shift A", "Shift A:\n9 & <less>"]);
  expect(said).toContainEqual(["D4", undefined, "weighed"]);
  const path = "xl/comments1.xml";
  const before = partOf(file, path);
  expect(part(path)).toBe(
    before
      .replace("\n7 &amp; more, by hand", "\n9 &amp; &lt;less&gt;")
      .replace('ref="C3"', 'ref="D4"')
      .replace("<t>estimated</t>", '<t xml:space="preserve">weighed</t>'),
  );
  const own = unzipSync(file);
  const touched = Object.keys(parts).filter((path) => partOf(file, path) !== part(path));
  expect(touched.sort()).toEqual(["xl/comments1.xml", "xl/drawings/vmlDrawing1.vml"]);
  expect(Object.keys(parts)).toEqual(Object.keys(own));
});

test.each([
  ["a run that begins otherwise is the last one", "Night shift", "<r><rPr><b/></rPr>", 1],
  ["a first run alone is left", "Shift A:", "<r><rPr><b/></rPr>", 1],
])("of a comment in runs, %s", async (_, text, kept, runs) => {
  const { said, part } = await patched(commentedFile(), changed([["B2", { cell: "B2", text }]]));
  expect(said).toContainEqual(["B2", "Shift A", text]);
  expect(part("xl/comments1.xml")).toContain(kept);
  expect(part("xl/comments1.xml").match(/<r>/g)).toHaveLength(runs);
});

test("new comments join those of their sheet, with their authors and boxes", async () => {
  const file = commentedFile();
  const { said, part, parts } = await patched(
    file,
    changed(
      [["C3", null]],
      [
        at("E5", { text: "by  hand\nor not" }),
        at("XFD1048576", { text: "the last", author: "Lab & Co" }),
      ],
    ),
  );
  expect(said).toContainEqual(["E5", undefined, "by  hand\nor not"]);
  expect(said).toContainEqual(["XFD1048576", "Lab & Co", "the last"]);
  expect(said).toHaveLength(4);
  expect(part("xl/comments1.xml")).toContain(
    "<authors><author>Shift A</author><author/><author>Lab &amp; Co</author></authors>",
  );
  const drawing = part("xl/drawings/vmlDrawing1.vml");
  expect(drawing).toContain("<x:Row>4</x:Row><x:Column>4</x:Column>");
  expect(drawing).toContain("<x:Anchor>16381, 15, 1048571, 2, 16383, 31, 1048575, 4</x:Anchor>");
  expect(drawing).toContain('xmlns:o="urn:schemas-microsoft-com:office:office"');
  expect(drawing.match(/<v:shape /g)).toHaveLength(4);
  expect(new Set(drawing.match(/ id="_x0000_s\d+"/g)).size).toBe(2);
  expect(Object.keys(parts)).toEqual(Object.keys(unzipSync(file)));
});

describe("a sheet that has none gets what the file format wants for them", () => {
  const added = [at("B2", { text: "weighed" }), at("B3", { text: "twice", author: "Lab" })];
  const sheet = '<sheetData/><pageMargins left="1"/><tableParts count="0"/>';
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  test("two parts, their types and relationships, and the drawing at its place in the sheet", async () => {
    const { said, part } = await patched(
      rawWorkbook({ sheets: { Log: sheet, Other: "<sheetData/>" } }),
      changed([], added),
    );
    expect(said).toEqual([
      ["B2", undefined, "weighed"],
      ["B3", "Lab", "twice"],
    ]);
    const related = part("xl/worksheets/_rels/sheet1.xml.rels");
    const [, comments, drawing] =
      /Id="(\w+)" Type="[^"]*\/comments".*Id="(\w+)" Type="[^"]*\/vmlDrawing"/.exec(related) ?? [];
    expect(related).toContain(`Type="${office}/comments" Target="/xl/comments1.xml"`);
    expect(related).toContain(`Type="${office}/vmlDrawing" Target="/xl/drawings/vmlDrawing1.vml"`);
    expect(comments).not.toBe(drawing);
    expect(part("xl/worksheets/sheet1.xml")).toMatch(
      new RegExp(`<pageMargins left="1"/><legacyDrawing [^>]*r:id="${drawing}"/><tableParts`),
    );
    const types = part("[Content_Types].xml");
    expect(types).toContain('PartName="/xl/comments1.xml"');
    expect(types).toContain('PartName="/xl/drawings/vmlDrawing1.vml"');
    const boxes = part("xl/drawings/vmlDrawing1.vml");
    expect(boxes.match(/<v:shapetype /g)).toHaveLength(1);
    expect(boxes.match(/<v:shape /g)).toHaveLength(2);
  });

  test("beside the drawing of its pages' heads and the comments of another sheet, which stay as they are", async () => {
    const all = rawParts({
      sheets: { Log: '<sheetData/><legacyDrawingHF r:id="rId1"/>' },
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="rId1" Type="${office}/vmlDrawing" Target="../drawings/vmlDrawing1.vml"/></Relationships>`,
        "xl/drawings/vmlDrawing1.vml": "<xml/>",
        "xl/comments1.xml": "<comments/>",
      },
    });
    const { said, part } = await patched(zipped(all), changed([], added));
    expect(said).toHaveLength(2);
    expect(part("xl/drawings/vmlDrawing1.vml")).toBe("<xml/>");
    expect(part("xl/comments1.xml")).toBe("<comments/>");
    expect(part("xl/worksheets/sheet1.xml")).toMatch(
      /<sheetData\/><legacyDrawing [^>]*\/><legacyDrawingHF r:id="rId1"\/>/,
    );
    expect(part("xl/drawings/vmlDrawing2.vml").match(/<v:shape /g)).toHaveLength(2);
  });
});

test("boxes whose elements have other prefixes go with their comments, too", async () => {
  const all = unzipSync(commentedFile());
  const path = "xl/drawings/vmlDrawing1.vml";
  const renamed = strFromU8(all[path] as Uint8Array).replace(/(<\/?)[vx]:/g, "$1ns1:");
  const file = zipped({ ...all, [path]: renamed });
  const { part } = await patched(
    file,
    changed([
      ["B2", null],
      ["C3", { cell: "D9" }],
    ]),
  );
  expect(part(path).match(/<ns1:shape /g)).toHaveLength(2);
  expect(part(path)).toContain("<ns1:Row>8</ns1:Row><ns1:Column>3</ns1:Column>");
});
