import { describe, expect, test } from "vitest";
import { areaAddress } from "../../../src/workbook/address";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { doseLadder } from "../../../templates/plans/dose-ladder";
import { bareRules } from "../bare-rules";
import { rawWorkbook } from "../raw-workbook";

const names = functionNames(["DOSE.TARGET"]);

const dxfs =
  '<dxfs count="3"><dxf><font><b/><color rgb="FF9C1C12"/></font><fill><patternFill><bgColor rgb="FFFBE3E0"/></patternFill></fill></dxf><dxf><fill><patternFill patternType="solid"><fgColor rgb="FF112233"/><bgColor rgb="FFE1F2E5"/></patternFill></fill><border><left><color rgb="FF000000"/></left></border></dxf><dxf><border><left/></border></dxf></dxfs>';

async function sheet(inner: string) {
  const { book } = await readWorkbook(
    rawWorkbook({ sheets: { S: `<sheetData/>${inner}` }, styles: dxfs }),
    names,
  );
  const [first] = book.sheets;
  if (!first) throw new Error("The workbook has no sheet.");
  return first;
}

const format = (places: string, rules: string) =>
  sheet(`<conditionalFormatting sqref="${places}">${rules}</conditionalFormatting>`);

async function formulas(places: string, rules: string) {
  const { formats = [] } = await format(places, rules);
  return formats.map(({ area, formula }) => [areaAddress(area), formula]);
}

const cellIs = (operator: string, ...bounds: string[]) =>
  `<cfRule type="cellIs" dxfId="0" priority="1" operator="${operator}">${bounds
    .map((bound) => `<formula>${bound}</formula>`)
    .join("")}</cfRule>`;

const scale = (type: string, bound: string) =>
  `<cfRule type="colorScale" priority="1"><colorScale><cfvo type="${type}" val="${bound}"/><cfvo type="max"/><color rgb="FFFFFFFF"/><color rgb="FF112233"/></colorScale></cfRule>`;

/** A sheet without any rule. */
const bare = { name: "S", cells: {}, columnWidths: {}, rowHeights: {} };

describe("conditional formats", () => {
  test.each([
    ["greaterThan", ["$C$1"], "B2>($C$1)"],
    ["lessThanOrEqual", ["5"], "B2<=(5)"],
    ["between", ["1", "A1"], "AND(B2>=(1),B2<=(A1))"],
    ["notBetween", ["1", "2"], "OR(B2<(1),B2>(2))"],
  ])("%s becomes a formula", async (operator, bounds, formula) => {
    expect(await formulas("B2:B9", cellIs(operator, ...bounds))).toEqual([["B2:B9", formula]]);
  });

  test("a formula is moved along with each further area", async () => {
    const rule =
      '<cfRule type="expression" dxfId="0" priority="1"><formula>B2&gt;$C2</formula></cfRule>';
    expect(await formulas("B2:B3 D7", rule)).toEqual([
      ["B2:B3", "B2>$C2"],
      ["D7", "D7>$C7"],
    ]);
  });

  test("our functions have their own names again", async () => {
    const rule =
      '<cfRule type="expression" dxfId="0" priority="1"><formula>A1&gt;_xldudf_WETEND_DOSE_TARGET(1,1)</formula></cfRule>';
    expect(await formulas("A1", rule)).toEqual([["A1", "A1>WETEND.DOSE.TARGET(1,1)"]]);
  });

  test("the first in the order of the file comes first, with its look", async () => {
    const { formats } = await format(
      "A1",
      '<cfRule type="containsErrors" dxfId="1" priority="7"><formula>ISERROR(A1)</formula></cfRule><cfRule type="expression" dxfId="0" priority="2" stopIfTrue="1"><formula>A1=1</formula></cfRule>',
    );
    const area = { row: 0, column: 0, rows: 1, columns: 1 };
    expect(formats).toMatchObject([
      {
        area,
        formula: "A1=1",
        look: { bold: true, ink: "#9c1c12", fill: "#fbe3e0" },
        stops: true,
      },
      {
        area,
        formula: "ISERROR(A1)",
        look: { fill: "#e1f2e5", xml: expect.stringContaining("<border><left><color") },
      },
    ]);
  });

  test.each([
    ["a scale whose bound is a cell", "A1", scale("num", "$B$1")],
    ["an unknown comparison", "A1", cellIs("resembles", "1")],
    ["one bound where two are needed", "A1", cellIs("between", "1")],
    ["a place that is none", "ZZZZ9", cellIs("equal", "1")],
    ["a place outside the sheet", "A1048577", cellIs("equal", "1")],
    ["an endless formula", "A1", cellIs("equal", `1${"+1".repeat(5000)}`)],
  ])("%s is left out, and counted", async (_, places, rules) => {
    expect(await format(places, rules)).toEqual({ ...bare, unreadRules: 1 });
  });

  test("a scale over two areas stands over each, said by one element", async () => {
    const { formats, unreadRules } = await format("A1:A3 C1:C3", scale("num", "1"));
    expect(formats?.map(({ area, inFile }) => [areaAddress(area), inFile?.index])).toEqual([
      ["A1:A3", 0],
      ["C1:C3", 0],
    ]);
    expect(formats?.[1]?.ranking).toEqual(formats?.[0]?.ranking);
    expect(unreadRules).toBeUndefined();
  });

  test("a look that is nowhere changes nothing, and is left out", async () => {
    expect(await format("A1", cellIs("equal", "1").replace('"0"', '"99"'))).toEqual(bare);
  });

  test("a look of borders only is known by its file's words", async () => {
    const { formats } = await format("A1", cellIs("equal", "1").replace('"0"', '"2"'));
    expect(formats?.[0]?.look).toEqual({ xml: "<dxf><border><left/></border></dxf>" });
  });

  test("a look is told without the prefix of its file, and not at all where an extension is in it", async () => {
    const looks = async (dxf: string) => {
      const styles = `<x:dxfs xmlns:x="x" count="1">${dxf}</x:dxfs>`;
      const rule = `<sheetData/><conditionalFormatting sqref="A1">${cellIs("equal", "1")}</conditionalFormatting>`;
      const { book } = await readWorkbook(rawWorkbook({ sheets: { S: rule }, styles }), names);
      return book.sheets[0]?.formats?.map(({ look }) => look);
    };
    const font = "<x:font><x:b/></x:font>";
    expect(await looks(`<x:dxf>${font}</x:dxf>`)).toEqual([
      { bold: true, xml: "<dxf><font><b/></font></dxf>" },
    ]);
    const extended = `<x:dxf>${font}<x:extLst><x:ext><y:z xmlns:y="y"/></x:ext></x:extLst></x:dxf>`;
    expect(await looks(extended)).toEqual([{ bold: true }]);
  });

  test("an extension of a rule says more of it, and is not counted as another one", async () => {
    const bar = `<cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar><extLst><ext xmlns:x14="x"><x14:id>{B0}</x14:id></ext></extLst></cfRule>`;
    const extension = (id: string) =>
      `<extLst><ext xmlns:x14="x" xmlns:xm="y"><x14:conditionalFormattings><x14:conditionalFormatting><x14:cfRule type="dataBar" id="${id}"><x14:dataBar minLength="0"><x14:cfvo type="autoMin"/><x14:cfvo type="num"><xm:f>5&lt;6</xm:f></x14:cfvo></x14:dataBar></x14:cfRule><xm:sqref>A1:A9</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst>`;
    const read = (id: string) =>
      sheet(`<conditionalFormatting sqref="A1:A9">${bar}</conditionalFormatting>${extension(id)}`);
    const area = { row: 0, column: 0, rows: 9, columns: 1 };
    const ranking = {
      attributes: { type: "dataBar" },
      inner:
        '<dataBar><cfvo type="min"></cfvo><cfvo type="max"></cfvo><color rgb="FF638EC6"></color></dataBar>',
    };
    const extended =
      '<dataBar minLength="0"><cfvo type="autoMin"></cfvo><cfvo type="num"><f>5&lt;6</f></cfvo></dataBar>';
    expect(bareRules((await read("{B0}")).formats)).toEqual([
      { area, look: {}, ranking: { ...ranking, extension: extended } },
    ]);
    expect(bareRules((await read("{B1}")).formats)).toEqual([{ area, look: {}, ranking }]);
    expect((await read("{B0}")).unreadRules).toBeUndefined();
    expect((await read("{B1}")).unreadRules).toBe(1);
  });

  test("more than anybody has are cut short", async () => {
    const places = Array.from({ length: 5000 }, (_, row) => `A${row + 1}`).join(" ");
    const { formats, unreadRules } = await format(places, cellIs("equal", "1").repeat(50));
    expect(formats).toHaveLength(1000);
    expect(unreadRules).toBe(50);
  });
});

const validation = (attributes: string, inner = "") =>
  `<dataValidations count="1"><dataValidation sqref="B2" showErrorMessage="1" ${attributes}>${inner}</dataValidation></dataValidations>`;

const from = (text: string) => `<formula1>${text}</formula1>`;
const to = (text: string) => `<formula2>${text}</formula2>`;

test("each rule tells which element of its file says it, those that are not understood counted among them", async () => {
  const rule = (type: string, formula: string) =>
    `<cfRule type="${type}" dxfId="0" priority="1"><formula>${formula}</formula></cfRule>`;
  const { formats } = await format("B2 D2", rule("strange", "1") + rule("expression", "B2=1"));
  const inFile = { sheet: "xl/worksheets/sheet1.xml", index: 1 };
  expect(formats).toMatchObject([
    { formula: "B2=1", inFile },
    { formula: "D2=1", inFile },
  ]);
});

describe("what may be typed", () => {
  test.each([
    [
      'type="decimal" allowBlank="1" error="Between 1 and 5."',
      from("1") + to("5"),
      {
        type: "decimal",
        comparison: "between",
        from: "1",
        to: "5",
        blank: true,
        refusal: { text: "Between 1 and 5." },
      },
    ],
    [
      'type="whole" operator="greaterThan"',
      from("A1"),
      {
        type: "whole",
        comparison: "greaterThan",
        from: "A1",
        blank: false,
        refusal: { text: "Give a whole number above A1." },
      },
    ],
    [
      'type="list" showInputMessage="1" promptTitle="Additive" prompt="Which one?"',
      from("Additives!$A$1:$A$9"),
      {
        type: "list",
        from: "Additives!$A$1:$A$9",
        blank: false,
        prompt: { title: "Additive", text: "Which one?" },
        refusal: { text: "Choose one from the list." },
      },
    ],
    [
      'type="custom" allowBlank="1" error="Twice_x0021_"',
      from("COUNTIF(B:B,B2)=1"),
      { type: "custom", from: "COUNTIF(B:B,B2)=1", blank: true, refusal: { text: "Twice!" } },
    ],
    [
      'type="textLength" operator="lessThan" errorStyle="warning" errorTitle="Grade"',
      from("8"),
      {
        type: "custom",
        from: "LEN(B2)<(8)",
        blank: false,
        refusal: {
          title: "Grade",
          text: "The workbook does not allow this here.",
          mild: "warning",
        },
      },
    ],
    [
      'type="date" operator="lessThan"',
      from("45000"),
      {
        type: "date",
        comparison: "lessThan",
        from: "45000",
        blank: false,
        refusal: { text: "Give a date within the limits of the workbook." },
      },
    ],
    [
      'showInputMessage="1" prompt="From the log."',
      "",
      { type: "any", blank: false, prompt: { text: "From the log." } },
    ],
  ])("%s", async (attributes, inner, rule) => {
    const area = { row: 1, column: 1, rows: 1, columns: 1 };
    const { entryRules } = await sheet(validation(attributes, inner));
    expect(bareRules(entryRules)).toEqual([{ area, ...rule }]);
  });

  test("a list on another sheet stands in an extension of the file", async () => {
    const { entryRules } = await sheet(
      '<extLst><ext xmlns:x14="x" xmlns:xm="y"><x14:dataValidations count="1"><x14:dataValidation type="list" allowBlank="1" showErrorMessage="1"><x14:formula1><xm:f>Lists!$A$1:$A$3</xm:f></x14:formula1><xm:sqref>C3:C9</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst>',
    );
    expect(entryRules?.map(({ area, from }) => [areaAddress(area), from])).toEqual([
      ["C3:C9", "Lists!$A$1:$A$3"],
    ]);
  });

  test.each([
    ["no bound", validation('type="decimal"')],
    ["one bound where two are needed", validation('type="whole"', from("1"))],
    ["an unknown kind", validation('type="colour"', from("1"))],
  ])("%s is left out, and counted", async (_, inner) => {
    expect(await sheet(inner)).toEqual({ ...bare, unreadRules: 1 });
  });
});

test("a template that was saved asks and paints what its plan says", async () => {
  const planned = layOut(doseLadder);
  const { book } = await readWorkbook(await writeWorkbook(planned, names), names);
  planned.sheets.forEach((sheet, index) => {
    const saved = book.sheets[index];
    expect(saved?.formats ?? []).toMatchObject(sheet.formats);
    expect(bareRules(saved?.entryRules)).toEqual(sheet.entryRules);
  });
});
