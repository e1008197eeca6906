import { readFile } from "node:fs/promises";
import { strFromU8, unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { USUAL_COLUMN_WIDTH, USUAL_ROW_HEIGHT } from "../../src/workbench/book/grid-book";
import { areaAddress } from "../../src/workbook/address";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { layOut } from "../../src/workbook/layout/lay-out";
import { ruleLooks } from "../../src/workbook/layout/looks";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();

/** Of the grid: what its headers take. */
const HEAD = { width: 46, height: 20 };

describe("a template", () => {
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
  });

  test("paints a load over its limit, and no longer once it is below", async () => {
    await workbench.select("Permit!A1");
    expect(await painted(workbench.page, ruleLooks.breach.fill)).toBe(false);
    await workbench.type("Permit!B10", "2000");
    await expect.poll(() => painted(workbench.page, ruleLooks.breach.fill)).toBe(true);
    await workbench.type("Permit!B10", "3400");
    await expect.poll(() => painted(workbench.page, ruleLooks.breach.fill)).toBe(false);
  });

  test("refuses an entry in the plan's own words, and keeps the old value", async () => {
    const before = await workbench.read("Dose!B5");
    expect(before.message).toBe("Dry starch per tonne of oven-dry furnish.");
    expect(await enter(workbench, "77")).toBe(
      "Not taken: 77. Give a number from 0.1 to 50 (kg/t).",
    );
    expect((await workbench.read("B6")).value).toBe("340");
    expect(await workbench.read("B5")).toEqual(before);
    expect(await enter(workbench, "much")).toMatch(/^Not taken: much\. Give a number/);
    await workbench.type("B5", "7");
    expect((await workbench.read("B5")).value).toBe("7");
  });

  test("offers the choices of a list by keys alone", async () => {
    await workbench.select("Where it goes!B32");
    const { page } = workbench;
    await page.keyboard.press("Alt+ArrowDown");
    const list = page.getByRole("listbox", { name: "Choices for B32" });
    await list.waitFor();
    expect(await list.getByRole("option").allTextContents()).toEqual([
      "on fibre",
      "on fines",
      "on filler",
      "dissolved",
    ]);
    expect(await list.getByRole("option", { selected: true }).textContent()).toBe("on fines");
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.press("d");
    await page.keyboard.press("Enter");
    await list.waitFor({ state: "hidden" });
    await page.locator("#status .value", { hasText: /^dissolved$/ }).waitFor();
    await page.keyboard.press("ArrowUp");
    await page.locator("#status .address", { hasText: /^B31$/ }).waitFor();
  });

  test("takes from a list what is typed, and nothing else", async () => {
    await workbench.select("Where it goes!B32");
    expect(await enter(workbench, "nowhere")).toBe("Not taken: nowhere. Choose one from the list.");
    await workbench.page.getByRole("button", { name: "Choices for B32" }).click();
    await workbench.page.getByRole("option", { name: "on filler" }).click();
    await workbench.page.locator("#status .value", { hasText: /^on filler$/ }).waitFor();
    await workbench.type("B32", "on fines");
    expect((await workbench.read("B32")).value).toBe("on fines");
  });

  test("is saved with each of its rules once", async () => {
    const parts = await saved(workbench.page);
    layOut(doseAndEffluent).sheets.forEach(({ entryRules, formats }, index) => {
      const sheet = parts(`xl/worksheets/sheet${index + 1}.xml`);
      expect(sheet.match(/<dataValidation /g) ?? []).toHaveLength(entryRules.length);
      expect(sheet.match(/<cfRule /g) ?? []).toHaveLength(formats.length);
    });
  });

  test("has its rules follow a row that is put in above them", async () => {
    await workbench.select("Permit!B2");
    await workbench.page.mouse.click(300, 147, { button: "right" });
    await workbench.page.getByText("Insert", { exact: true }).last().hover();
    await workbench.page.getByText("rows above").click({ position: { x: 4, y: 4 } });
    await workbench.page.locator("input").last().press("Enter");
    await workbench.page.getByText("rows above").waitFor({ state: "hidden" });
    expect((await workbench.read("B4")).message).toBe("");
    expect((await workbench.read("B5")).message).toBe("For the days that are not like the mean.");
    expect(await enter(workbench, "-5")).toMatch(/^Not taken: -0\.05\. Give a number from 0/);
    await workbench.type("B11", "2000");
    await expect.poll(() => painted(workbench.page, ruleLooks.breach.fill)).toBe(true);
  });

  test("has its rules go on over the rows that a table takes in", async () => {
    await workbench.openTemplate("Dose ladder");
    expect((await workbench.read("Results!E55")).message).toBe("");
    await workbench.type("Results!A55", "5");
    const said = "Mean of the strips of this sheet (ISO 1924-2). Where there is none: why.";
    await expect.poll(async () => (await workbench.read("E55")).message).toBe(said);
    expect(await enter(workbench, "0")).toMatch(/^Not taken: 0\. Give a number from 0\.001/);
  });

  test("logs no error", () => expect(workbench.errors).toEqual([]));
});

test("rules go along with cells that are cut to another sheet, and go back and there again by undoing and redoing", async () => {
  const x14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
  const bars = `<conditionalFormatting sqref="A1:A3"><cfRule type="dataBar" priority="2"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF4466FF"/></dataBar><extLst><ext xmlns:x14="${x14}" uri="{B025F937-C7B1-47D3-B67F-A62EFF666E3E}"><x14:id>{0}</x14:id></ext></extLst></cfRule></conditionalFormatting>`;
  const moreOfBars = `<extLst><ext xmlns:x14="${x14}" uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"><x14:conditionalFormattings><x14:conditionalFormatting xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:cfRule type="dataBar" id="{0}"><x14:dataBar><x14:cfvo type="autoMin"/><x14:cfvo type="autoMax"/></x14:dataBar></x14:cfRule><xm:sqref>A1:A3</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst>`;
  const rules =
    '<conditionalFormatting sqref="A1:A3"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>$F$1</formula></cfRule></conditionalFormatting>' +
    bars +
    '<dataValidations count="2"><dataValidation type="list" showErrorMessage="1" sqref="B1:B2"><formula1>$D$1:$D$2</formula1></dataValidation>' +
    '<dataValidation type="custom" showInputMessage="1" prompt="A number of its own." sqref="A1:A3"><formula1>COUNTIF($A$1:$A$3,A1)=1</formula1></dataValidation></dataValidations>' +
    moreOfBars;
  const cells =
    '<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="D1" t="str"><v>low</v></c><c r="F1"><v>10</v></c></row><row r="2"><c r="A2"><v>-20</v></c><c r="D2" t="str"><v>high</v></c></row><row r="3"><c r="A3"><v>30</v></c></row></sheetData>';
  const rulesOfT =
    '<conditionalFormatting sqref="C1:C9"><cfRule type="expression" dxfId="1" priority="1"><formula>C1&lt;&gt;""</formula></cfRule></conditionalFormatting>' +
    '<dataValidations count="1"><dataValidation type="custom" showInputMessage="1" prompt="Of the second sheet." sqref="C1:C9"><formula1>C1&gt;0</formula1></dataValidation></dataValidations>';
  const fill = (colour: string) =>
    `<dxf><fill><patternFill><bgColor rgb="FF${colour}"/></patternFill></fill></dxf>`;
  const styles = `<dxfs count="2">${fill("00FF99")}${fill("99FF00")}</dxfs>`;
  const sheets = { S: cells + rules, T: `<sheetData/>${rulesOfT}` };
  const workbench = await served.withFile("two.xlsx", rawWorkbook({ sheets, styles }));
  const { page } = workbench;
  const isPainted = expect.poll(() => painted(page, "#00ff99"));
  await isPainted.toBe(true);
  const list = page.getByRole("button", { name: /^Choices for / });
  const told = async (...places: readonly string[]) => {
    const messages: string[] = [];
    for (const place of places) messages.push((await workbench.read(place)).message);
    return messages;
  };
  const [own, others] = ["A number of its own.", "Of the second sheet."];

  await workbench.copy("A2:B3", "Control+x");
  await workbench.paste("T!C5");
  const thereNow = async () => {
    await expect.poll(async () => (await workbench.read("T!C6")).value).toBe("30");
    expect(await told("T!C4", "T!C5", "T!C6", "T!C7")).toEqual([others, own, own, others]);
    await isPainted.toBe(true);
    // A bar below nothing, as long as the least of these cells; and nothing of what stood there.
    await expect.poll(() => painted(page, "#ff0000")).toBe(true);
    expect(await painted(page, "#99ff00")).toBe(false);
    await workbench.select("T!D5");
    await list.click();
    const choices = page.getByRole("listbox", { name: "Choices for D5" }).getByRole("option");
    await choices.first().waitFor();
    expect(await choices.allTextContents()).toEqual(["low", "high"]);
    await page.keyboard.press("Escape");
    expect(await told("S!A1", "S!A2", "S!A3")).toEqual([own, "", ""]);
    await isPainted.toBe(false);
    await workbench.select("S!B2");
    expect(await list.count()).toBe(0);
  };
  await thereNow();
  const { bytes, notice } = await workbench.save();
  expect(notice).toBe("");
  const { book } = await readWorkbook(bytes, functionNames([]));
  const standing = book.sheets.map(({ entryRules = [], formats = [] }) =>
    [...entryRules, ...formats].map(({ area }) => areaAddress(area)),
  );
  expect(standing).toEqual([
    ["B1", "A1", "A1", "A1"],
    ["D5", "C5:C6", "C1:C4", "C7:C9", "C1:C4", "C7:C9", "C5:C6", "C5:C6"],
  ]);

  await page.keyboard.press("Control+z");
  await expect.poll(async () => (await workbench.read("S!A3")).value).toBe("30");
  expect(await told("S!A3", "T!C6")).toEqual([own, others]);
  await workbench.select("S!B2");
  await list.waitFor();
  await isPainted.toBe(true);
  await page.keyboard.press("Control+y");
  await thereNow();
  expect(workbench.errors).toEqual([]);
});

describe("a workbook from elsewhere", () => {
  const rules =
    '<conditionalFormatting sqref="A1:A3"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>$B$1</formula></cfRule></conditionalFormatting>' +
    '<conditionalFormatting sqref="H1:H3"><cfRule type="colorScale" priority="2"><colorScale><cfvo type="num" val="0"/><cfvo type="num" val="10"/><color rgb="FF00AA11"/><color rgb="FFAA00FF"/></colorScale></cfRule></conditionalFormatting>' +
    '<conditionalFormatting sqref="I1:I3"><cfRule type="dataBar" priority="3"><dataBar><cfvo type="num" val="0"/><cfvo type="num" val="10"/><color rgb="FFFF8811"/></dataBar></cfRule></conditionalFormatting>' +
    '<dataValidations count="5"><dataValidation type="list" allowBlank="1" showErrorMessage="1" sqref="C1"><formula1>$D$1:$D$3</formula1></dataValidation>' +
    '<dataValidation type="list" showErrorMessage="1" error="From its row." sqref="C5:C6"><formula1>D5:E5</formula1></dataValidation>' +
    '<dataValidation type="custom" showErrorMessage="1" showInputMessage="1" error="Not twice." prompt="A number of its own." sqref="A1:A3"><formula1>COUNTIF($A$1:$A$3,A1)=1</formula1></dataValidation>' +
    '<dataValidation type="decimal" operator="lessThan" errorStyle="warning" showErrorMessage="1" error="Rare." sqref="G1"><formula1>60</formula1></dataValidation>' +
    '<dataValidation type="date" operator="greaterThan" showErrorMessage="1" error="After the start." sqref="E1"><formula1>$F$1</formula1></dataValidation></dataValidations>';
  const cells =
    '<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>10</v></c><c r="D1" t="str"><v>low</v></c><c r="E1" s="1"><v>45400</v></c><c r="F1" s="1"><v>45300</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="D2" t="str"><v>high</v></c></row><row r="3"><c r="A3"><v>3</v></c><c r="D3"><v>7</v></c></row><row r="5"><c r="D5" t="str"><v>oak</v></c><c r="E5" t="str"><v>ash</v></c></row><row r="6"><c r="D6" t="str"><v>elm</v></c><c r="E6" t="str"><v>fir</v></c></row></sheetData>';
  const styles =
    '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs><dxfs count="1"><dxf><fill><patternFill><bgColor rgb="FF00FF99"/></patternFill></fill></dxf></dxfs>';
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    const file = rawWorkbook({ sheets: { S: cells + rules }, styles });
    workbench = await served.withFile("foreign.xlsx", file);
  });

  test("is painted as its file says", async () => {
    expect(await painted(workbench.page, "#00ff99")).toBe(false);
    await workbench.type("A2", "11");
    await expect.poll(() => painted(workbench.page, "#00ff99")).toBe(true);
    await workbench.type("B1", "12");
    await expect.poll(() => painted(workbench.page, "#00ff99")).toBe(false);
    expect(await painted(workbench.page, "#aa00ff")).toBe(false);
    await workbench.type("H1", "10");
    await expect.poll(() => painted(workbench.page, "#aa00ff")).toBe(true);
    expect(await painted(workbench.page, "#ff8811")).toBe(false);
    await workbench.type("I1", "10");
    await expect.poll(() => painted(workbench.page, "#ff8811")).toBe(true);
  });

  test("asks for what its file asks for, in the words of the file", async () => {
    expect((await workbench.read("A1")).message).toBe("A number of its own.");
    expect(await enter(workbench, "11")).toBe("Not taken: 11. Not twice.");
    expect((await workbench.read("A1")).value).toBe("1");
    await workbench.type("A1", "5");
    expect((await workbench.read("A1")).value).toBe("5");
    await workbench.select("E1");
    expect(await enter(workbench, "2023-12-31")).toMatch(/After the start\.$/);
    await workbench.type("E1", "2025-12-31");
    expect((await workbench.read("E1")).value).toBe("2025-12-31");
  });

  test("lets an entry stand of which its file only warns, and tells the words", async () => {
    await workbench.type("G1", "77");
    const line = workbench.page.locator("#status");
    await expect.poll(() => line.textContent()).toContain("Taken all the same, in G1: 77. Rare.");
    expect((await line.getAttribute("class")) ?? "").not.toContain("refused");
    await workbench.type("G1", "50");
    expect(await workbench.read("G1")).toEqual({ value: "50", message: "" });
  });

  test("offers its lists, numbers as numbers", async () => {
    await workbench.select("C1");
    await workbench.page.keyboard.press("Alt+ArrowDown");
    const options = workbench.page.getByRole("listbox").getByRole("option");
    await options.first().waitFor();
    expect(await options.allTextContents()).toEqual(["low", "high", "7"]);
    await workbench.page.keyboard.press("End");
    await workbench.page.keyboard.press("Enter");
    await workbench.page.locator("#status .value", { hasText: /^7$/ }).waitFor();
    await workbench.type("G1", "=C1+1");
    await expect.poll(async () => (await workbench.read("G1")).value).toBe("8");
    // A list beside each of its cells.
    await workbench.select("C6");
    await workbench.page.keyboard.press("Alt+ArrowDown");
    await options.first().waitFor();
    expect(await options.allTextContents()).toEqual(["elm", "fir"]);
    await workbench.page.keyboard.press("Escape");
    expect(await enter(workbench, "oak")).toBe("Not taken: oak. From its row.");
  });

  test("says where a cell that is dragged onto another breaks its rule, as one that is pasted does", async () => {
    const { page } = workbench;
    const said = page.locator("#status .message");
    const date = (await workbench.read("E1")).value;
    const highToTheDate = async () => {
      await workbench.select("D2");
      // By its upper edge, one cell to the right and one up.
      const [x, y] = [HEAD.width + 3.5 * USUAL_COLUMN_WIDTH, HEAD.height + USUAL_ROW_HEIGHT];
      await page.mouse.move(...(await workbench.onGrid(x, y)));
      await page.mouse.down();
      const to = await workbench.onGrid(x + USUAL_COLUMN_WIDTH, y - USUAL_ROW_HEIGHT);
      await page.mouse.move(...to, { steps: 5 });
      await page.mouse.up();
    };
    await highToTheDate();
    const sentence = "breaks the rule for its entries: E1. After the start.";
    await expect.poll(() => said.allTextContents()).toEqual([`A moved cell ${sentence}`]);
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await workbench.read("D2")).value).toBe("high");
    await workbench.copy("D2", "Control+x");
    await workbench.paste("E1");
    await expect.poll(() => said.allTextContents()).toEqual([`A pasted cell ${sentence}`]);
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await workbench.read("D2")).value).toBe("high");
    expect((await workbench.read("E1")).value).toBe(date);
  });

  test("keeps its rules as they were when it is saved", async () => {
    expect((await saved(workbench.page))("xl/worksheets/sheet1.xml")).toContain(rules);
    expect(workbench.errors).toEqual([]);
  });
});

test("a list in the first cell of a file has its button when the file is opened", async () => {
  const rule =
    '<sheetData/><dataValidations count="1"><dataValidation type="list" sqref="A1"><formula1>"low,high"</formula1></dataValidation></dataValidations>';
  const workbench = await served.withTemplate("Blank workbook");
  await workbench.openFile("first.xlsx", rawWorkbook({ sheets: { S: rule } }));
  await workbench.page.getByRole("button", { name: "Choices for A1" }).waitFor();
  expect(workbench.errors).toEqual([]);
});

test("a conditional format judges each cell by itself when a row is put in between", async () => {
  const cells =
    '<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row><row r="4"><c r="A4"><v>99</v></c></row></sheetData>';
  const rule =
    '<conditionalFormatting sqref="A1:A3"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>10</formula></cfRule></conditionalFormatting>';
  const styles =
    '<cellXfs count="1"><xf numFmtId="0"/></cellXfs><dxfs count="1"><dxf><fill><patternFill><bgColor rgb="FF00FF99"/></patternFill></fill></dxf></dxfs>';
  const file = rawWorkbook({ sheets: { S: cells + rule }, styles });
  const workbench = await served.withFile("between.xlsx", file);
  const { page } = workbench;
  await workbench.insertRowAbove("S", 2);
  await workbench.type("A4", "50");
  await expect.poll(() => painted(page, "#00ff99")).toBe(true);
  await workbench.type("A4", "4");
  await expect.poll(() => painted(page, "#00ff99")).toBe(false);
  expect(workbench.errors).toEqual([]);
});

test("a row that is put in below a shaded number keeps the look of its cell, and not the shade", async () => {
  const scale =
    '<conditionalFormatting sqref="A1:A3"><cfRule type="colorScale" priority="1"><colorScale><cfvo type="num" val="0"/><cfvo type="num" val="10"/><color rgb="FF00AA11"/><color rgb="FFAA00FF"/></colorScale></cfRule></conditionalFormatting>';
  const numbers = [10, 10, 0].map((value, at) => {
    const row = at + 1;
    return `<row r="${row}"><c r="A${row}" s="1"><v>${value}</v></c></row>`;
  });
  const cells = `<sheetData>${numbers.join("")}</sheetData>`;
  const styles = '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="2"/></cellXfs>';
  const file = rawWorkbook({ sheets: { S: cells + scale }, styles });
  const workbench = await served.withFile("shades.xlsx", file);
  await expect.poll(() => painted(workbench.page, "#aa00ff")).toBe(true);
  await workbench.insertRowAbove("S", 3);
  const { book } = await readWorkbook((await workbench.save()).bytes, functionNames([]));
  const looks = [1, 2, 3].map((row) => book.styles[book.sheets[0]?.cells[row]?.[0]?.style ?? ""]);
  expect(looks.map((look) => look?.format)).toEqual(["0.00", "0.00", "0.00"]);
  expect(looks.map((look) => look?.fill)).toEqual([undefined, undefined, undefined]);
  expect(workbench.errors).toEqual([]);
});

test("an entry rule and a list take in a row that is put in between, and lose it by undoing", async () => {
  const cells =
    '<sheetData><row r="1"><c r="A1"><v>1</v></c><c r="D1" t="str"><v>low</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="D2" t="str"><v>high</v></c></row><row r="3"><c r="A3"><v>3</v></c></row></sheetData>';
  const rules =
    '<dataValidations count="2"><dataValidation type="list" allowBlank="1" showErrorMessage="1" error="From the list." sqref="C1"><formula1>$D$1:$D$2</formula1></dataValidation>' +
    '<dataValidation type="custom" showErrorMessage="1" error="Not twice." sqref="A1:A3"><formula1>COUNTIF($A$1:$A$3,A1)=1</formula1></dataValidation></dataValidations>';
  const file = rawWorkbook({ sheets: { S: cells + rules } });
  const workbench = await served.withFile("twice.xlsx", file);
  const { page } = workbench;
  await workbench.insertRowAbove("S", 2);
  for (const [address, double] of [
    ["A1", "3"],
    ["A2", "3"],
    ["A4", "1"],
  ] as const) {
    await workbench.select(address);
    expect(await enter(workbench, double)).toBe(`Not taken: ${double}. Not twice.`);
  }
  await workbench.type("A2", "7");
  await workbench.type("A4", "5");
  expect((await workbench.read("A2")).value).toBe("7");
  expect((await workbench.read("A4")).value).toBe("5");
  await workbench.type("D2", "middle");
  await workbench.type("C1", "high");
  expect((await workbench.read("C1")).value).toBe("high");
  await workbench.select("C1");
  await page.keyboard.press("Alt+ArrowDown");
  const options = page.getByRole("listbox").getByRole("option");
  await options.first().waitFor();
  expect(await options.allTextContents()).toEqual(["low", "middle", "high"]);
  await page.keyboard.press("Escape");
  // The entries in A2, A4, D2 and C1, and the row.
  for (let steps = 0; steps < 5; steps++) await page.keyboard.press("Control+z");
  await expect.poll(async () => (await workbench.read("A3")).value).toBe("3");
  await workbench.type("A5", "3");
  await workbench.type("A3", "4");
  await workbench.select("A3");
  expect(await enter(workbench, "2")).toBe("Not taken: 2. Not twice.");
  expect(workbench.errors).toEqual([]);
});

/** Types into the selected cell; gives what the status line says where the entry is not taken. */
async function enter({ page }: WorkbenchPage, text: string): Promise<string> {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  const told = page.locator("#status .message", { hasText: "Not taken" });
  await told.waitFor();
  return (await told.textContent()) ?? "";
}

/** Whether the grid shows a cell in this colour. */
async function painted(page: Page, colour: string): Promise<boolean> {
  const picture = await page.locator("#grid").screenshot();
  return page.evaluate(
    async ([data, sought]) => {
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      const image = await createImageBitmap(new Blob([bytes]));
      const context = new OffscreenCanvas(image.width, image.height).getContext("2d");
      if (!context) throw new Error("The browser cannot draw.");
      context.drawImage(image, 0, 0);
      const { data: dots } = context.getImageData(0, 0, image.width, image.height);
      const [red, green, blue] = [1, 3, 5].map((at) =>
        Number.parseInt(sought.slice(at, at + 2), 16),
      );
      let found = 0;
      for (let at = 0; at < dots.length; at += 4)
        if (dots[at] === red && dots[at + 1] === green && dots[at + 2] === blue) found++;
      return found > 200;
    },
    [picture.toString("base64"), colour] as const,
  );
}

/** Saves, and gives the parts of the file by their path. */
async function saved(page: Page): Promise<(path: string) => string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  const parts = unzipSync(await readFile(await download.path()));
  return (path) => strFromU8(parts[path] as Uint8Array);
}
