import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addressOf, parseAddress } from "../../../src/workbook/address";
import type { Value } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { usualLimits } from "../../../src/workbook/package/limits";
import type { CellEdit, SheetEdits } from "../../../src/workbook/patch/edits";
import { patchSheet } from "../../../src/workbook/patch/sheet-patch";
import { Allowance } from "../../../src/workbook/read/allowance";
import { SheetReader } from "../../../src/workbook/read/sheet";
import { readXml } from "../../../src/workbook/xml";

const names = functionNames(["DOSE.TARGET", "TRIAL.LADDER"]);
const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';

function editsOf(list: Record<string, CellEdit>): SheetEdits {
  const edits = new Map<number, Map<number, CellEdit>>();
  for (const [address, edit] of Object.entries(list)) {
    const { row, column } = parseAddress(address);
    edits.set(row, (edits.get(row) ?? new Map()).set(column, edit));
  }
  return edits;
}

const patched = (xml: string, list: Record<string, CellEdit>, dynamicMark?: number) =>
  patchSheet("sheet", xml, editsOf(list), { names, dynamicMark });

const sheet = (inner: string) => `<worksheet ${main}>${inner}</worksheet>`;
const inside = (xml: string) => xml.slice(sheet("").indexOf(">") + 1, -"</worksheet>".length);
const rows = (inner: string, list: Record<string, CellEdit>, dynamicMark?: number) =>
  inside(patched(sheet(`<sheetData>${inner}</sheetData>`), list, dynamicMark).xml).replace(
    /<\/?sheetData>/g,
    "",
  );

describe("a value that changes", () => {
  const before =
    '<row r="1" ht="20"><c r="A1" s="3"><f>B1*2</f><v>1</v></c><c r="B1"><v>7</v></c></row>';

  test.each<[string, CellEdit, string]>([
    ["a number", { value: 0.1 + 0.2 }, '<c r="A1" s="3"><f>B1*2</f><v>0.30000000000000004</v></c>'],
    ["a small number", { value: 1.5e-10 }, '<c r="A1" s="3"><f>B1*2</f><v>1.5E-10</v></c>'],
    ["a large number", { value: 1e21 }, '<c r="A1" s="3"><f>B1*2</f><v>1E21</v></c>'],
    ["minus nothing", { value: -0 }, '<c r="A1" s="3"><f>B1*2</f><v>0</v></c>'],
    [
      "a text",
      { value: "a<b & c\u0007" },
      '<c r="A1" s="3" t="str"><f>B1*2</f><v>a&lt;b &amp; c_x0007_</v></c>',
    ],
    ["a Boolean", { value: true }, '<c r="A1" s="3" t="b"><f>B1*2</f><v>1</v></c>'],
    ["an error", { value: { error: "#N/A" } }, '<c r="A1" s="3" t="e"><f>B1*2</f><v>#N/A</v></c>'],
    [
      "an error that files do not know by name",
      { value: { error: "#SPILL!" } },
      '<c r="A1" s="3" t="e"><f>B1*2</f><v>#VALUE!</v></c>',
    ],
    ["nothing", { value: null }, '<c r="A1" s="3"><f>B1*2</f></c>'],
  ])("%s", (_, edit, cell) => {
    const after = before.replace(/<c r="A1".*?<\/c>/, () => cell);
    expect(rows(before, { A1: edit })).toBe(after);
  });

  test("changes no other character of the sheet", () => {
    const around = (v: string) =>
      `<?xml version="1.0"?>\r\n<!-- ours --><worksheet ${main} xmlns:x14ac='urn:x'>\n  <sheetPr><tabColor rgb="FF00FF00"/></sheetPr><dimension ref="A1"/>\n<sheetData><row r="1" x14ac:dyDescent='0.3'><c  r="A1"  ><v>1</v></c >\n<c r="B1" s="4"><f ca="1">NOW( )</f><v>${v}</v></c></row></sheetData>&#10;<extLst><ext uri="{1}"><x>&amp;</x></ext></extLst></worksheet>`;
    expect(patched(around("2"), { B1: { value: 3 } }).xml).toBe(around("3"));
  });

  test("leaves out what pointed to a value of another kind", () => {
    expect(
      rows('<row r="1"><c r="A1" t="e" vm="1"><f>X()</f><v>#VALUE!</v></c></row>', {
        A1: { value: 2 },
      }),
    ).toBe('<row r="1"><c r="A1"><f>X()</f><v>2</v></c></row>');
  });
});

describe("cells that come and go", () => {
  test("stand in their place among the others, and the row's note of its columns goes", () => {
    const before = '<row r="2" spans="2:4"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row>';
    const list = { A2: { value: 5 }, C2: { value: 6 }, F2: { value: 7 } };
    expect(rows(before, list)).toBe(
      '<row r="2"><c r="A2"><v>5</v></c><c r="B2"><v>1</v></c><c r="C2"><v>6</v></c><c r="D2"><v>2</v></c><c r="F2"><v>7</v></c></row>',
    );
  });

  test("open rows where there were none or only empty ones", () => {
    const before = '<row r="2" ht="9"/><row r="4"><c r="A4"><v>1</v></c></row>';
    const list = { A1: { value: 1 }, A2: { value: 2 }, A3: { value: 3 }, A9: { value: 9 } };
    expect(rows(before, list)).toBe(
      '<row r="1"><c r="A1"><v>1</v></c></row><row r="2" ht="9"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row><row r="4"><c r="A4"><v>1</v></c></row><row r="9"><c r="A9"><v>9</v></c></row>',
    );
    expect(inside(patched(sheet("<sheetData/>"), { B2: { value: 1 } }).xml)).toBe(
      '<sheetData><row r="2"><c r="B2"><v>1</v></c></row></sheetData>',
    );
  });

  test("count in rows and cells that do not say where they are", () => {
    expect(
      rows("<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>", {
        B1: { value: 9 },
        A2: { value: 8 },
      }),
    ).toBe('<row><c><v>1</v></c><c r="B1"><v>9</v></c></row><row><c r="A2"><v>8</v></c></row>');
  });

  test("keep the prefix that the sheet uses", () => {
    const before = `<x:worksheet xmlns:x="m"><x:sheetData><x:row r="1"><x:c r="A1"><x:f>1</x:f><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    expect(patched(before, { A1: { value: "t" }, B1: { value: 2 }, A2: { value: 3 } }).xml).toBe(
      `<x:worksheet xmlns:x="m"><x:sheetData><x:row r="1"><x:c r="A1" t="str"><x:f>1</x:f><x:v>t</x:v></x:c><x:c r="B1"><x:v>2</x:v></x:c></x:row><x:row r="2"><x:c r="A2"><x:v>3</x:v></x:c></x:row></x:sheetData></x:worksheet>`,
    );
  });

  test("lose a value but keep their format", () => {
    const before = '<row r="1"><c r="A1" s="2"><v>1</v></c><c r="B1"><v>1</v></c></row>';
    expect(rows(before, { A1: { value: null }, B1: { value: null } })).toBe(
      '<row r="1"><c r="A1" s="2"/></row>',
    );
  });

  test("widen and narrow the sheet's note of the area that it uses", () => {
    const noted = (ref: string, more: string) =>
      sheet(
        `<dimension ref="${ref}"/><sheetData><row r="2"><c r="B2"><v>1</v></c>${more}</row></sheetData>`,
      );
    expect(patched(noted("B2", ""), { D2: { value: 4 } }).xml).toBe(
      noted("B2:D2", '<c r="D2"><v>4</v></c>'),
    );
    expect(patched(noted("B2:D2", '<c r="D2"><v>4</v></c>'), { D2: { value: null } }).xml).toBe(
      noted("B2", ""),
    );
  });
});

describe("a formula that fills cells", () => {
  const anchor = (ref: string, value: number) =>
    `<c r="A1" cm="1"><f t="array" ref="${ref}">_xldudf_WETEND_TRIAL_LADDER(0,8,B1)</f><v>${value}</v></c>`;
  const short = `<row r="1">${anchor("A1:A2", 0)}<c r="B1"><v>2</v></c></row><row r="2"><c r="A2"><v>8</v></c></row>`;
  const long = `<row r="1">${anchor("A1:A3", 0)}<c r="B1"><v>2</v></c></row><row r="2"><c r="A2"><v>4</v></c></row><row r="3"><c r="A3"><v>8</v></c></row>`;

  test("grows: its reach, its cells", () => {
    const list = {
      A1: { value: 0, spill: { rows: 3, columns: 1 } },
      A2: { value: 4 },
      A3: { value: 8 },
    };
    expect(rows(short, list)).toBe(long);
  });

  test("shrinks, and says which cells it left", () => {
    const list = {
      A1: { value: 0, spill: { rows: 2, columns: 1 } },
      A2: { value: 8 },
      A3: { value: null },
    };
    const result = patched(sheet(`<sheetData>${long}</sheetData>`), list);
    expect(inside(result.xml)).toBe(`<sheetData>${short}<row r="3"></row></sheetData>`);
    expect(result.emptied).toEqual(["A3"]);
  });
});

describe("a formula that changes", () => {
  test("is stored as files store it, as a dynamic array where the workbook has a mark for them", () => {
    const edit = {
      value: 7,
      formula: 'WETEND.DOSE.TARGET(B1,0.9)&"<"',
      spill: { rows: 1, columns: 1 },
    };
    expect(rows("", { A1: edit }, 1)).toBe(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1">_xldudf_WETEND_DOSE_TARGET(B1,0.9)&amp;"&lt;"</f><v>7</v></c></row>',
    );
    expect(rows("", { A1: edit })).toBe(
      '<row r="1"><c r="A1"><f>_xldudf_WETEND_DOSE_TARGET(B1,0.9)&amp;"&lt;"</f><v>7</v></c></row>',
    );
  });

  test("gives way to its value", () => {
    expect(
      rows('<row r="1"><c r="A1" s="1" cm="1"><f t="array" ref="A1">X()</f><v>1</v></c></row>', {
        A1: { value: "kept", formula: null },
      }),
    ).toBe('<row r="1"><c r="A1" s="1" t="str"><v>kept</v></c></row>');
  });

  test("is spelled out for those that shared it", () => {
    const shared =
      '<row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">B1&amp;"x"</f><v>1</v></c></row><row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c></row><row r="3"><c r="A3"><f t="shared" si="0"/><v>3</v></c></row>';
    expect(rows(shared, { A1: { value: 5, formula: null }, A3: { value: 9 } })).toBe(
      '<row r="1"><c r="A1"><v>5</v></c></row><row r="2"><c r="A2"><f>B2&amp;"x"</f><v>2</v></c></row><row r="3"><c r="A3"><f>B3&amp;"x"</f><v>9</v></c></row>',
    );
  });
});

/** The cells of a sheet's XML, as the reader of workbooks sees them. */
function valuesOf(xml: string): Map<string, Value> {
  const reading = {
    names,
    strings: [],
    dynamicMarks: new Set<number>(),
    styleCount: 0,
    differences: [],
    theme: [],
    allowance: new Allowance(usualLimits),
  };
  const sheetReader = new SheetReader(reading, "sheet");
  readXml("sheet", xml, sheetReader);
  const values = new Map<string, Value>();
  for (const [row, cells] of Object.entries(sheetReader.sheet("S", false).cells))
    for (const [column, { value }] of Object.entries(cells))
      values.set(addressOf(Number(row), Number(column)), value);
  return values;
}

test("whatever values are put into whatever cells, they are read back and the others stay", () => {
  const value: fc.Arbitrary<Value> = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
    fc.string({ unit: "binary" }),
    fc.boolean(),
    fc.constantFrom({ error: "#N/A" }, { error: "#VALUE!" }, null),
  );
  const address = fc.tuple(fc.nat(6), fc.nat(6)).map(([row, column]) => addressOf(row, column));
  const list = fc.dictionary(address, value);
  const edits = (values: Record<string, Value>) =>
    Object.fromEntries(Object.entries(values).map(([cell, its]) => [cell, { value: its }]));
  const filled = (values: Record<string, Value>) =>
    new Map(Object.entries(values).filter(([, its]) => its !== null));
  fc.assert(
    fc.property(list, list, (first, second) => {
      const once = patched(sheet("<sheetData/>"), edits(first)).xml;
      expect(valuesOf(once)).toEqual(filled(first));
      const twice = patched(once, edits(second)).xml;
      expect(valuesOf(twice)).toEqual(filled({ ...first, ...second }));
    }),
  );
});
