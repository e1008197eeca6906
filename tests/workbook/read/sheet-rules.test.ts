import { describe, expect, test } from "vitest";
import { entryRulesOf, formatsOf } from "../../../src/workbench/planned-rules";
import { areaAddress } from "../../../src/workbook/address";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { doseLadder } from "../../../templates/plans/dose-ladder";
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
    expect(formats).toEqual([
      {
        area,
        formula: "A1=1",
        look: { bold: true, ink: "#9c1c12", fill: "#fbe3e0" },
        stops: true,
      },
      { area, formula: "ISERROR(A1)", look: { fill: "#e1f2e5" } },
    ]);
  });

  test.each([
    ["a scale of colours", "A1", '<cfRule type="colorScale" priority="1"><colorScale/></cfRule>'],
    ["a look that changes nothing that is shown", "A1", cellIs("equal", "1").replace('"0"', '"2"')],
    ["a look that is nowhere", "A1", cellIs("equal", "1").replace('"0"', '"99"')],
    ["an unknown comparison", "A1", cellIs("resembles", "1")],
    ["one bound where two are needed", "A1", cellIs("between", "1")],
    ["a place that is none", "ZZZZ9", cellIs("equal", "1")],
    ["a place outside the sheet", "A1048577", cellIs("equal", "1")],
    ["an endless formula", "A1", cellIs("equal", `1${"+1".repeat(5000)}`)],
  ])("%s is left out", async (_, places, rules) => {
    expect((await format(places, rules)).formats).toBeUndefined();
  });

  test("more than anybody has are cut short", async () => {
    const places = Array.from({ length: 5000 }, (_, row) => `A${row + 1}`).join(" ");
    const { formats } = await format(places, cellIs("equal", "1").repeat(50));
    expect(formats).toHaveLength(1000);
  });
});

const validation = (attributes: string, inner = "") =>
  `<dataValidations count="1"><dataValidation sqref="B2" showErrorMessage="1" ${attributes}>${inner}</dataValidation></dataValidations>`;

const from = (text: string) => `<formula1>${text}</formula1>`;
const to = (text: string) => `<formula2>${text}</formula2>`;

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
        refusal: "Between 1 and 5.",
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
        refusal: "Give a whole number above A1.",
      },
    ],
    [
      'type="list" showInputMessage="1" promptTitle="Additive" prompt="Which one?"',
      from("Additives!$A$1:$A$9"),
      {
        type: "list",
        from: "Additives!$A$1:$A$9",
        blank: false,
        prompt: "Which one?",
        refusal: "Choose one from the list.",
      },
    ],
    [
      'type="custom" allowBlank="1" error="Twice_x0021_"',
      from("COUNTIF(B:B,B2)=1"),
      { type: "custom", from: "COUNTIF(B:B,B2)=1", blank: true, refusal: "Twice!" },
    ],
    [
      'type="textLength" operator="lessThan" errorStyle="warning"',
      from("8"),
      { type: "custom", from: "LEN(B2)<(8)", blank: false },
    ],
    [
      'type="date" operator="lessThan"',
      from("45000"),
      {
        type: "date",
        comparison: "lessThan",
        from: "45000",
        blank: false,
        refusal: "Give a date within the limits of the workbook.",
      },
    ],
    [
      'showInputMessage="1" prompt="From the log."',
      "",
      { type: "any", blank: false, prompt: "From the log." },
    ],
  ])("%s", async (attributes, inner, rule) => {
    const area = { row: 1, column: 1, rows: 1, columns: 1 };
    expect((await sheet(validation(attributes, inner))).entryRules).toEqual([{ area, ...rule }]);
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
  ])("%s is left out", async (_, inner) => {
    expect((await sheet(inner)).entryRules).toBeUndefined();
  });
});

test("a template that was saved asks and paints what its plan says", async () => {
  const planned = layOut(doseLadder);
  const { book } = await readWorkbook(await writeWorkbook(planned, names), names);
  planned.sheets.forEach((sheet, index) => {
    const saved = book.sheets[index];
    expect(saved?.formats ?? []).toEqual(formatsOf(sheet));
    expect(saved?.entryRules ?? []).toEqual(entryRulesOf(sheet));
  });
});
