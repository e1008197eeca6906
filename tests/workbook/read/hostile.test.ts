import { Uint8ArrayReader, Uint8ArrayWriter, ZipWriter } from "@zip.js/zip.js";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { type Limits, usualLimits } from "../../../src/workbook/package/limits";
import { openPackage } from "../../../src/workbook/package/open-package";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { WorkbookRefusal } from "../../../src/workbook/workbook-refusal";
import { rawParts, rawWorkbook, zipped } from "../raw-workbook";

const names = functionNames([]);
const damaged = new WorkbookRefusal("The file is damaged: its zip archive cannot be read.");

async function refusal(bytes: Uint8Array, limits: Limits = usualLimits): Promise<string> {
  try {
    await readWorkbook(bytes, names, limits);
  } catch (problem) {
    if (problem instanceof WorkbookRefusal) return problem.message;
    throw problem;
  }
  return "was read";
}

const row = (inner: string) => `<sheetData><row r="1">${inner}</row></sheetData>`;
const withSheet = (inner: string) => rawWorkbook({ sheets: { S: inner } });
const withPart = (path: string, part: string | Uint8Array | null) =>
  rawWorkbook({ sheets: { S: row('<c r="A1"><v>1</v></c>') }, parts: { [path]: part } });

/** A compound file as far as its first bytes and one name of its directory go. */
function compoundFile(name: string): Uint8Array {
  const bytes = new Uint8Array(4096);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...name].forEach((letter, at) => {
    bytes[1024 + 2 * at] = letter.charCodeAt(0);
  });
  return bytes;
}

describe("what is no workbook is refused in one sentence", () => {
  test.each([
    ["an empty file", new Uint8Array(), "The file is empty."],
    [
      "a text",
      strToU8("day;dose\n1;8"),
      "The file is plain text, not a workbook: open it in a spreadsheet program and save it as .xlsx first.",
    ],
    [
      "a picture",
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d]),
      "The file is not a workbook: it is no .xlsx or .xlsm file.",
    ],
    [
      "an encrypted workbook",
      compoundFile("EncryptedPackage"),
      "The file is encrypted: save a copy without a password first.",
    ],
    [
      "a workbook in the old binary format",
      compoundFile("Workbook"),
      "The file is in an old binary format: save it as .xlsx first.",
    ],
    [
      "a zip archive of something else",
      zipped({ mimetype: "application/vnd.oasis.opendocument.spreadsheet" }),
      "The file is not a workbook: its package has no workbook in it.",
    ],
    [
      "a text document",
      withPart("xl/workbook.xml", "<document/>"),
      "The file is not a workbook: its main part is another document.",
    ],
    [
      "a workbook that counts its days from 1904",
      withPart("xl/workbook.xml", '<workbook><workbookPr date1904="1"/></workbook>'),
      "The workbook counts its days from 1904, so that each date would be read four years and a day too early. Turn that off in the options of the workbook, add 1462 to each date, and save it.",
    ],
    [
      "a binary workbook",
      rawWorkbook({
        sheets: {},
        parts: {
          "xl/workbook.bin": "x",
          "_rels/.rels":
            '<Relationships><Relationship Id="r" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>',
        },
      }),
      "The file is in the binary format .xlsb: save it as .xlsx first.",
    ],
    [
      "half a file",
      rawWorkbook({ sheets: { S: "" } }).slice(0, 700),
      "The file is damaged: its zip archive cannot be read.",
    ],
  ])("%s", async (_, bytes, sentence) => expect(await refusal(bytes)).toBe(sentence));

  test("an archive with a password", async () => {
    const writer = new ZipWriter(new Uint8ArrayWriter(), { password: "x", encryptionStrength: 1 });
    for (const [path, part] of Object.entries(rawParts({ sheets: { S: "" } })))
      await writer.add(path, new Uint8ArrayReader(strToU8(part as string)));
    expect(await refusal(await writer.close())).toBe(
      "The file is encrypted: save a copy without a password first.",
    );
  });
});

describe("a package that means harm is refused", () => {
  test.each([
    "../evil.xml",
    "/etc/evil.xml",
    "xl/../../evil.xml",
    "C:/evil.xml",
    "xl\\..\\..\\evil",
  ])("a part named %s", async (path) => {
    expect(await refusal(withPart(path, "<x/>"))).toBe(
      "The file holds a part whose name points outside the package.",
    );
  });

  test("a relationship that climbs out of the package stays inside it", async () => {
    const bytes = withPart(
      "xl/_rels/workbook.xml.rels",
      '<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="../../../../etc/passwd"/></Relationships>',
    );
    expect(await refusal(bytes)).toBe("The file is damaged: it lacks its part etc/passwd.");
  });

  test("the same part twice", async () => {
    const parts = rawParts({ sheets: { S: "" } });
    expect(await refusal(zipped({ ...parts, "XL/WORKBOOK.XML": "<workbook/>" }))).toBe(
      "The file holds XL/WORKBOOK.XML twice.",
    );
  });

  test("a part that unpacks to a thousand times its size", async () => {
    const bomb = `<sheetData>${" ".repeat(20 * 2 ** 20)}</sheetData>`;
    expect(await refusal(withSheet(bomb))).toBe(
      "The file's xl/worksheets/sheet1.xml unpacks to more than 200 times its size, as no workbook does.",
    );
  });

  test("a part that is larger than it says", async () => {
    const bytes = zipSync({ "a.xml": strToU8("x".repeat(5000)) });
    const view = new DataView(bytes.buffer);
    const directory = bytes.length - 22 - (46 + 5);
    view.setUint32(22, 10, true);
    view.setUint32(directory + 24, 10, true);
    const file = await openPackage(bytes);
    await expect(file.text("a.xml")).rejects.toThrow(WorkbookRefusal);
  });

  test("parts that are one and the same piece of the file", async () => {
    const bytes = zipped(rawParts({ sheets: { S: "" } }));
    const view = new DataView(bytes.buffer);
    const end = bytes.length - 22;
    const last = new TextDecoder("latin1").decode(bytes).lastIndexOf("PK\u0001\u0002");
    const twin = bytes.slice(last, end);
    twin.set(strToU8("_"), 46);
    const overlapping = new Uint8Array([...bytes.slice(0, end), ...twin, ...bytes.slice(end)]);
    const after = new DataView(overlapping.buffer);
    const newEnd = end + twin.length;
    for (const count of [8, 10])
      after.setUint16(newEnd + count, view.getUint16(end + count, true) + 1, true);
    after.setUint32(newEnd + 12, view.getUint32(end + 12, true) + twin.length, true);
    const file = await openPackage(overlapping);
    await file.text("xl/worksheets/sheet1.xml");
    await expect(file.text("_l/worksheets/sheet1.xml")).rejects.toThrow(damaged);
    await expect((await openPackage(overlapping)).rewrite(new Map())).rejects.toThrow(damaged);
  });

  test("a part whose bytes are not those that were packed", async () => {
    const bytes = withSheet(row('<c r="A1"><v>1</v></c>'));
    const last = new TextDecoder("latin1").decode(bytes).lastIndexOf("PK\u0001\u0002");
    const local = new DataView(bytes.buffer).getUint32(last + 42, true);
    // The checksum, in the directory and beside the part.
    for (const at of [last + 16, local + 14]) bytes[at] = 255 - (bytes[at] as number);
    expect(await refusal(bytes)).toBe("The file is damaged: its zip archive cannot be read.");
  });

  test("an archive in the archive stays packed, however large it would be", async () => {
    const inner = zipSync({ "bomb.xml": new Uint8Array(50 * 2 ** 20) });
    expect(await refusal(withPart("xl/embeddings/inner.zip", inner))).toBe("was read");
  });

  test("more bytes, parts or cells than the limits allow", async () => {
    const bytes = withSheet(row('<c r="A1"><v>1</v></c><c r="B1"><v>1</v></c>'));
    const limits = (one: Partial<Limits>) => ({ ...usualLimits, ...one });
    expect(await refusal(bytes, limits({ fileBytes: 100 }))).toMatch(/^The file is larger than/);
    expect(await refusal(bytes, limits({ entries: 3 }))).toMatch(/^The file holds \d+ parts/);
    expect(await refusal(bytes, limits({ partBytes: 300 }))).toMatch(/is too large to be read\.$/);
    expect(await refusal(bytes, limits({ readBytes: 500 }))).toBe(
      "The file is too large to be read.",
    );
    expect(await refusal(bytes, limits({ cells: 1 }))).toMatch(/^The file holds more than 1 cells/);
    expect(await refusal(bytes, limits({ cells: 2 }))).toBe("was read");
  });
});

describe("a list without end is refused before it fills the memory", () => {
  const million = 1_000_001;
  const filled = (element: string) => element.repeat(million);
  const inPart = (path: string, root: string, element: string, type: string) =>
    rawWorkbook({
      sheets: { S: "" },
      related: { [type]: path },
      parts: { [`xl/${path}`]: `<${root}>${filled(element)}</${root}>` },
    });
  test.each([
    ["formats", () => inPart("styles.xml", "styleSheet", "<xf/>", "styles")],
    ["marks", () => inPart("metadata.xml", "metadata", "<bk/>", "sheetMetadata")],
    ["names", () => withPart("xl/workbook.xml", `<workbook>${filled("<x/>")}</workbook>`)],
    ["relations", () => withPart("xl/_rels/workbook.xml.rels", `<x>${filled("<x/>")}</x>`)],
  ])("%s", async (_, bytes) => {
    expect(await refusal(bytes())).toMatch(
      /^The file's \S+ holds more than 1,000,000 elements, which is the most that is read\.$/,
    );
  });

  test("texts, merged areas, formulas", async () => {
    const limits = (one: Partial<Limits>) => ({ ...usualLimits, ...one });
    const texts = rawWorkbook({ sheets: { S: "" }, strings: ["<t>a</t>", "<t>b</t>"] });
    expect(await refusal(texts, limits({ cells: 1 }))).toMatch(
      /^The file shares more than 1 texts/,
    );
    const merged = withSheet(
      '<mergeCells><mergeCell ref="A1:B1"/><mergeCell ref="A2"/></mergeCells>',
    );
    expect(await refusal(merged, limits({ merged: 1 }))).toMatch(
      /^The file holds more than 1 merged areas/,
    );
    expect(await refusal(merged, limits({ merged: 2 }))).toBe("was read");
    const shared = withSheet(
      row(
        '<c r="A1"><f t="shared" si="0">B1+B2+B3</f></c><c r="B1"><f t="shared" si="0"/></c><c r="C1"><f t="shared" si="0"/></c>',
      ),
    );
    expect(await refusal(shared, limits({ formulas: 23 }))).toMatch(
      /^The file holds more than 23 characters of formulas/,
    );
    expect(await refusal(shared, limits({ formulas: 24 }))).toBe("was read");
  });

  test("one part that is a hundred thousand sheets, or two sheets of one name", async () => {
    const sheets = Array.from({ length: 100_000 }, (_, at) => `<sheet name="s${at}" r:id="rId1"/>`);
    const workbook = `<workbook><sheets>${sheets.join("")}</sheets></workbook>`;
    expect(await refusal(withPart("xl/workbook.xml", workbook))).toBe(
      "The file is damaged: two of its sheets are the part xl/worksheets/sheet1.xml.",
    );
    expect(await refusal(rawWorkbook({ sheets: { Log: "", LOG: "" } }))).toBe(
      "The file is damaged: two of its sheets are named LOG.",
    );
  });

  test("one part that is a hundred thousand tables is one table", async () => {
    const tables = '<Relationship Id="t" Type="x/table" Target="../tables/t.xml"/>'.repeat(100_000);
    const bytes = rawWorkbook({
      sheets: { S: "" },
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships>${tables}</Relationships>`,
        "xl/tables/t.xml":
          '<table name="T" ref="A1:A2"><tableColumns><tableColumn name="a"/></tableColumns></table>',
      },
    });
    expect((await readWorkbook(bytes, names)).book.tables).toHaveLength(1);
  });
});

describe("a formula that no spreadsheet takes is refused", () => {
  const withFormula = (formula: string) => withSheet(row(`<c r="B1"><f>${formula}</f></c>`));
  const nested = (call: string, levels: number) => `${call.repeat(levels)}1${")".repeat(levels)}`;
  test.each([
    ["a hundred thousand characters", `1${"+1".repeat(50_000)}`, "has 100,001 characters"],
    ["ten thousand brackets", nested("(", 10_000), "has 20,001 characters"],
    ["quotes that name no sheet", "'".repeat(100_000), "has 100,000 characters"],
    ["functions in functions", nested("SIN(", 65), "deeper than the 64 levels"],
    ["ranges in ranges", nested("_xlfn.ANCHORARRAY(", 5000), "has 95,001 characters"],
  ])("%s", async (_, formula, reason) => {
    const sentence = await refusal(withFormula(formula));
    expect(sentence).toContain("The file is damaged: the formula of B1 ");
    expect(sentence).toContain(reason);
  });

  test("and so is one that a name stands for", async () => {
    const bytes = rawWorkbook({
      sheets: { S: "" },
      definedNames: `<definedName name="long">${"1+".repeat(50_000)}1</definedName>`,
    });
    expect(await refusal(bytes)).toContain("the formula of the name long has 100,001 characters");
  });

  test("but not the longest and deepest that it takes", async () => {
    for (const formula of [
      `1${"+1".repeat(4095)}`,
      nested("(", 4000),
      nested("SIN(", 64),
      Array.from({ length: 1000 }, () => "SIN(1)").join("+"),
      "'".repeat(8192),
    ])
      expect(await refusal(withFormula(formula))).toBe("was read");
  });
});

describe("XML that means harm or makes no sense is refused", () => {
  const billion =
    '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><workbook><sheets>&b;</sheets></workbook>';
  const outside = '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]><workbook>&f;</workbook>';
  test.each([billion, outside])("a document type: %s", async (text) => {
    expect(await refusal(withPart("xl/workbook.xml", text))).toBe(
      "The file's xl/workbook.xml declares a document type, which no workbook does.",
    );
  });

  test.each([
    ["an entity from nowhere", row('<c r="A1"><v>&xxe;</v></c>'), "is not well-formed XML"],
    ["a tag that never closes", "<sheetData><row>", "is not well-formed XML"],
    ["elements without end", "<x>".repeat(5000), "nests too deeply"],
    ["a cell outside the sheet", row('<c r="XFE1"><v>1</v></c>'), "is no place on a sheet"],
    [
      "a row beyond the last",
      '<sheetData><row r="1048577"/></sheetData>',
      "is no place on a sheet",
    ],
    ["a cell in another row", row('<c r="A2"><v>1</v></c>'), "is no place on a sheet"],
    ["a number that is none", row('<c r="A1"><v>eight</v></c>'), "is no value of its type"],
    ["a number without bounds", row('<c r="A1"><v>1e999</v></c>'), "is no value of its type"],
    ["a text that is not there", row('<c r="A1" t="s"><v>7</v></c>'), "is no value of its type"],
    ["an error that is none", row('<c r="A1" t="e"><v>=cmd|x</v></c>'), "is no value of its type"],
    [
      "a shared formula without a first",
      row('<c r="A1"><f t="shared" si="3"/></c>'),
      "shares a formula that is nowhere",
    ],
    [
      "an array formula that fills cells elsewhere",
      row('<c r="A1"><f t="array" ref="C3:D4">1</f></c>'),
      "fills cells elsewhere",
    ],
    [
      "two array formulas over one another",
      row(
        '<c r="A1"><f t="array" ref="A1:C3">1</f></c><c r="B1"><f t="array" ref="B1:B9">1</f></c>',
      ),
      "overlap at B1",
    ],
  ])("%s", async (_, inner, reason) => expect(await refusal(withSheet(inner))).toContain(reason));

  test("text in another encoding", async () => {
    const utf16 = new Uint8Array([0xff, 0xfe, 0x3c, 0x00, 0x78, 0x00]);
    expect(await refusal(withPart("xl/workbook.xml", utf16))).toContain("is not encoded as UTF-8");
    const latin = '<?xml version="1.0" encoding="ISO-8859-1"?><workbook/>';
    expect(await refusal(withPart("xl/workbook.xml", latin))).toContain("only UTF-8 is read");
  });
});

describe("what only looks dangerous is read as it is", () => {
  test("names that JavaScript keeps for itself", async () => {
    const bytes = rawWorkbook({
      sheets: Object.fromEntries([
        ["__proto__", ""],
        ["constructor", row('<c r="A1" t="str"><v>__proto__</v></c>')],
      ]),
      definedNames:
        '<definedName name="__proto__">1</definedName><definedName name="toString">2</definedName>',
    });
    const { book } = await readWorkbook(bytes, names);
    expect(book.sheets.map(({ name }) => name)).toEqual(["__proto__", "constructor"]);
    expect(book.sheets[1]?.cells[0]?.[0]?.value).toBe("__proto__");
    expect(book.definedNames.map(({ name }) => name)).toEqual(["__proto__", "toString"]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test("texts that start like formulas stay texts", async () => {
    const { book } = await readWorkbook(
      withSheet(row('<c r="A1" t="inlineStr"><is><t>=HYPERLINK("http://x")</t></is></c>')),
      names,
    );
    expect(book.sheets[0]?.cells[0]?.[0]).toEqual({ value: '=HYPERLINK("http://x")' });
  });

  test("many array formulas over whole columns cost no more than few", async () => {
    const across = Array.from({ length: 2000 }, (_, column) => {
      let name = "";
      for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1)
        name = String.fromCharCode(65 + (rest % 26)) + name;
      return `<c r="${name}1"><f t="array" ref="${name}1:${name}1048576">1</f><v>1</v></c>`;
    });
    const rows = Array.from(
      { length: 2000 },
      (_, at) => `<row r="${at + 2}"><c><v>1</v></c></row>`,
    );
    const bytes = withSheet(
      `<sheetData><row r="1">${across.join("")}</row>${rows.join("")}</sheetData>`,
    );
    const { book } = await readWorkbook(bytes, names);
    expect(book.sheets[0]?.cells[1999]?.[0]).toEqual({ value: 1, spilled: true });
  });
});
