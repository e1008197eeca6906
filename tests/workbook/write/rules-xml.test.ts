import { describe, expect, test } from "vitest";
import { openedSheets } from "../../../src/workbench/book/opened-sheets";
import type { Sheet } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { filledIn } from "../../../src/workbook/layout/filled-in";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { bareRules } from "../bare-rules";
import { rawWorkbook } from "../raw-workbook";

const names = functionNames(["DOSE.TARGET"]);

const styles =
  '<dxfs count="3"><dxf><font><i/><strike/><color rgb="FF112233"/></font><numFmt numFmtId="170" formatCode="0.000"/><fill><patternFill><bgColor theme="5"/></patternFill></fill></dxf><dxf><border><left style="thin"><color rgb="FF000000"/></left></border></dxf><dxf><font><b/></font></dxf></dxfs>';

/** The rules of a sheet before and after its workbook is written anew. */
async function writtenAnew(rules: string): Promise<[Sheet | undefined, Sheet | undefined]> {
  const read = async (bytes: Uint8Array) => (await readWorkbook(bytes, names)).book;
  const before = await read(rawWorkbook({ sheets: { S: `<sheetData/>${rules}` }, styles }));
  const book = filledIn(openedSheets(before, []), before);
  return [before.sheets[0], (await read(await writeWorkbook(book, names))).sheets[0]];
}

const formatted = (rule: string, places = "B2:B9") =>
  `<conditionalFormatting sqref="${places}">${rule}</conditionalFormatting>`;

describe("a conditional format of another program is written anew with", () => {
  test.each([
    [
      "all of its look, and what it stops",
      '<cfRule type="cellIs" dxfId="0" priority="1" operator="lessThan" stopIfTrue="1"><formula>$A$1</formula></cfRule>',
    ],
    [
      "a look that the grid does not show",
      '<cfRule type="expression" dxfId="1" priority="1"><formula>B2=1</formula></cfRule>',
    ],
    [
      "no look, where it only stops those behind it",
      '<cfRule type="containsBlanks" priority="1" stopIfTrue="1"><formula>LEN(B2)=0</formula></cfRule>',
    ],
    [
      "its scale of colours",
      '<cfRule type="colorScale" priority="1"><colorScale><cfvo type="min"/><cfvo type="percentile" val="50"/><cfvo type="max"/><color rgb="FFF8696B"/><color theme="4" tint="0.4"/><color rgb="FF63BE7B"/></colorScale></cfRule>',
    ],
    ["its rank", '<cfRule type="top10" dxfId="2" priority="1" percent="1" bottom="1" rank="10"/>'],
  ])("%s", async (_, rule) => {
    const [before, after] = await writtenAnew(formatted(rule));
    expect(before?.formats).toHaveLength(1);
    const nothing = { xml: "<dxf></dxf>" };
    expect(after?.formats).toEqual(
      before?.formats?.map((one) => (one.stops && !one.look.xml ? { ...one, look: nothing } : one)),
    );
    expect(after?.unreadRules).toBeUndefined();
  });
});

test("conditional formats keep their order", async () => {
  const rule = (priority: number, dxfId: number) =>
    `<cfRule type="expression" dxfId="${dxfId}" priority="${priority}"><formula>B2=${priority}</formula></cfRule>`;
  const [before, after] = await writtenAnew(formatted(rule(3, 0) + rule(1, 2) + rule(2, 0)));
  expect(before?.formats?.map(({ formula }) => formula)).toEqual(["B2=1", "B2=2", "B2=3"]);
  expect(bareRules(after?.formats)).toEqual(bareRules(before?.formats));
});

test("a rule that compares its cells with one another stays one over all its areas", async () => {
  const rule = '<cfRule type="aboveAverage" dxfId="2" priority="1"/>';
  const [before, after] = await writtenAnew(formatted(rule, "B2:B9 D2:D4 F7"));
  expect(before?.formats).toHaveLength(3);
  expect(after?.formats).toEqual(before?.formats);
});

test("bars keep what an extension says of them, each its own", async () => {
  const bars = (places: string, id: string) =>
    `<conditionalFormatting sqref="${places}"><cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="num" val="5"/><color rgb="FF638EC6"/></dataBar><extLst><ext xmlns:x14="x"><x14:id>${id}</x14:id></ext></extLst></cfRule></conditionalFormatting>`;
  const more = (places: string, id: string, least: string) =>
    `<x14:conditionalFormatting><x14:cfRule type="dataBar" id="${id}"><x14:dataBar minLength="0"><x14:cfvo type="${least}"/><x14:cfvo type="num"><xm:f>5</xm:f></x14:cfvo></x14:dataBar></x14:cfRule><xm:sqref>${places}</xm:sqref></x14:conditionalFormatting>`;
  const [before, after] = await writtenAnew(
    bars("B2:B9 H2:H9", "{0}") +
      bars("D2:D9", "{1}") +
      `<extLst><ext xmlns:x14="x" xmlns:xm="y"><x14:conditionalFormattings>${more("B2:B9 H2:H9", "{0}", "autoMin")}${more("D2:D9", "{1}", "min")}</x14:conditionalFormattings></ext></extLst>`,
  );
  const extensions = before?.formats?.map(({ ranking }) => ranking?.extension);
  expect(extensions).toEqual([
    expect.stringContaining('type="autoMin"'),
    expect.stringContaining('type="autoMin"'),
    expect.stringContaining('type="min"'),
  ]);
  expect(bareRules(after?.formats)).toEqual(bareRules(before?.formats));
  expect(after?.unreadRules).toBeUndefined();
});

const asked = (attributes: string, from = "1", to = "9") =>
  `<dataValidations count="1"><dataValidation sqref="B2:B9" ${attributes}><formula1>${from}</formula1><formula2>${to}</formula2></dataValidation></dataValidations>`;

describe("an entry rule of another program is written anew", () => {
  test.each(
    "between notBetween equal notEqual greaterThan greaterThanOrEqual lessThan lessThanOrEqual".split(
      " ",
    ),
  )("with the comparison %s", async (operator) => {
    const [before, after] = await writtenAnew(
      asked(`type="whole" operator="${operator}" showErrorMessage="1" error="No."`),
    );
    expect(before?.entryRules?.[0]).toMatchObject({ type: "whole", comparison: operator });
    expect(after?.entryRules).toEqual(before?.entryRules);
  });

  test.each([
    ['showErrorMessage="1" errorTitle="Grade" error="Give a grade."'],
    ['showErrorMessage="1" errorStyle="warning" errorTitle="Grade" error="Unusual."'],
    ['showErrorMessage="1" errorStyle="information" error="Unusual."'],
    ['showInputMessage="1" promptTitle="Grade" prompt="As on the roll." allowBlank="1"'],
    ['showInputMessage="1" promptTitle="Grade"'],
  ])("with %s", async (words) => {
    const [before, after] = await writtenAnew(asked(`type="decimal" ${words}`));
    expect(before?.entryRules).toHaveLength(1);
    expect(after?.entryRules).toEqual(before?.entryRules);
  });

  test("with the arrow of its list hidden", async () => {
    const [before, after] = await writtenAnew(
      '<dataValidations count="1"><dataValidation type="list" showDropDown="1" sqref="B2"><formula1>"a,b"</formula1></dataValidation></dataValidations>',
    );
    expect(after?.entryRules).toMatchObject([{ type: "list", arrowHidden: true }]);
    expect(after?.entryRules).toEqual(before?.entryRules);
  });

  test("where it only helps", async () => {
    const [before, after] = await writtenAnew(
      '<dataValidations count="1"><dataValidation sqref="B2" showInputMessage="1" promptTitle="Day" prompt="As in the log."/></dataValidations>',
    );
    expect(bareRules(after?.entryRules)).toEqual([
      {
        area: { row: 1, column: 1, rows: 1, columns: 1 },
        type: "any",
        blank: false,
        prompt: { title: "Day", text: "As in the log." },
      },
    ]);
    expect(after?.entryRules).toEqual(before?.entryRules);
  });
});
