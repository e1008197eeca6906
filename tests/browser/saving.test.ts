/** What people change of a workbook beside its values is in the file that they save. */
import { readFile } from "node:fs/promises";
import { expect, inject, test } from "vitest";
import { USUAL_COLUMN_WIDTH, USUAL_ROW_HEIGHT } from "../../src/workbench/book/grid-book";
import { areaAddress } from "../../src/workbook/address";
import type { Area, Book, Sheet, Style } from "../../src/workbook/book";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { commentedFile } from "../workbook/commented";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import { tableFile } from "./shared/table-file";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));

/** Of the grid: what its headers take, and how far apart the lines between columns and rows are. */
const HEAD = { width: 46, height: 20 };

const cells =
  '<sheetData><row r="1"><c r="A1" s="1"><v>1</v></c><c r="B1" t="s"><v>0</v></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>30</v></c></row><row r="4"><c r="A4"><v>4</v></c></row></sheetData>';
const rules =
  '<conditionalFormatting sqref="A1:A4"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan" stopIfTrue="1"><formula>10</formula></cfRule><cfRule type="colorScale" priority="2"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FFFFFFFF"/><color rgb="FF63BE7B"/></colorScale></cfRule></conditionalFormatting>' +
  '<conditionalFormatting sqref="A1:A2 A4"><cfRule type="dataBar" priority="3"><dataBar><cfvo type="num" val="$H$1"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar></cfRule></conditionalFormatting>' +
  '<dataValidations count="1"><dataValidation type="whole" operator="notBetween" errorStyle="warning" errorTitle="Grade" error="Rare." promptTitle="Roll" prompt="As on the label." showInputMessage="1" showErrorMessage="1" sqref="A1:A4"><formula1>50</formula1><formula2>60</formula2></dataValidation></dataValidations>';
const styles =
  '<fonts count="1"><font><sz val="11"/><name val="Georgia"/></font></fonts><cellXfs count="2"><xf numFmtId="0" fontId="0"/><xf numFmtId="0" fontId="0"><protection locked="0"/></xf></cellXfs><dxfs count="1"><dxf><font><i/><strike/></font><fill><patternFill><bgColor rgb="FF00FF99"/></patternFill></fill></dxf></dxfs>';

const file = rawWorkbook({
  sheets: {
    S: `<sheetViews><sheetView workbookViewId="0"/></sheetViews>${cells}${rules}`,
    T: "<sheetData/>",
  },
  strings: ["<r><t>rich </t></r><r><rPr><b/></rPr><t>text</t></r>"],
  styles,
  definedNames: '<definedName name="first">S!$A$1</definedName>',
});

let workbench: WorkbenchPage;

async function saved(): Promise<{ book: Book; sheet: Sheet; notice: string }> {
  const { bytes, notice } = await workbench.save();
  const { book } = await readWorkbook(bytes, names);
  return { book, sheet: book.sheets[0] as Sheet, notice };
}

const lookAt = ({ sheets, styles }: Book, row: number, column: number): Style | undefined =>
  styles[sheets[0]?.cells[row]?.[column]?.style ?? ""];

const commentsOf = ({ comments = [] }: Sheet) =>
  comments.map(({ area, author }) => `${areaAddress(area)} ${author}`).sort();

/** Drags the line behind the first column. */
async function widenFirstColumn(by: number, width = USUAL_COLUMN_WIDTH): Promise<void> {
  const { mouse } = workbench.page;
  const edge = HEAD.width + width - 1;
  await mouse.move(...(await workbench.onGrid(edge, HEAD.height / 2)));
  await mouse.down();
  await mouse.move(...(await workbench.onGrid(edge + by, HEAD.height / 2)), { steps: 4 });
  await mouse.up();
}

/** By the menu of the row's header; the rows above have the usual height. */
async function onRow(row: number, item: string): Promise<void> {
  const { page } = workbench;
  await workbench.select(`A${row}`);
  const place = await workbench.onGrid(
    HEAD.width / 2,
    HEAD.height + (row - 0.5) * USUAL_ROW_HEIGHT,
  );
  await page.mouse.click(...place);
  await page.mouse.click(...place, { button: "right" });
  await page.getByText(item, { exact: true }).first().click();
}

test("A column that was made wider stays so in a file that is saved in place, and is asked for before it is put away.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  await widenFirstColumn(70);
  await workbench.openFile("own.xlsx", file);
  expect(workbench.asked).toEqual([expect.stringContaining("is not saved")]);
  await widenFirstColumn(70);
  const { sheet, notice } = await saved();
  expect(sheet.columnWidths?.[0]).toBeCloseTo((USUAL_COLUMN_WIDTH + 70 - 5) / 7, 0);
  expect(Object.keys(sheet.columnWidths ?? {})).toEqual(["0"]);
  expect(sheet.formats).toHaveLength(2);
  expect(notice).toBe("");
});

test("A template keeps a column that was made wider.", async () => {
  workbench = await served.withTemplate("Blank workbook");
  await widenFirstColumn(70);
  const { sheet } = await saved();
  expect(sheet.columnWidths?.[0]).toBeCloseTo((USUAL_COLUMN_WIDTH + 70 - 5) / 7, 0);
});

test("Bold type, percentages and dates that were typed are saved in place; all else of the cells stays.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  await workbench.select("A1");
  await workbench.page.keyboard.press("Control+b");
  await workbench.select("B1");
  await workbench.page.keyboard.press("Control+u");
  await workbench.type("C1", "82%");
  await workbench.type("C2", "2026-04-01");
  const { bytes } = await workbench.save();
  const { book, file: saved } = await readWorkbook(bytes, names);
  expect(lookAt(book, 0, 0)).toMatchObject({ bold: true });
  expect(lookAt(book, 0, 1)).toMatchObject({ underline: true });
  expect(lookAt(book, 0, 2)).toMatchObject({ format: "0%" });
  expect(book.sheets[0]?.cells[0]?.[2]?.value).toBe(0.82);
  expect(lookAt(book, 1, 2)).toMatchObject({ format: "yyyy-mm-dd" });
  expect(lookAt(book, 1, 0)).toBeUndefined();
  const xml = await saved.text("xl/worksheets/sheet1.xml");
  expect(xml).toMatch(/<c r="B1" t="s" s="\d+"><v>0<\/v><\/c>/);
  const bold = /<c r="A1" s="(\d+)">/.exec(xml)?.[1];
  const looks = (await saved.text("xl/styles.xml")).match(/<xf .*?(?:<\/xf>|\/>)/g);
  expect(looks?.[Number(bold)]).toContain('<protection locked="0"/>');
});

test("Rows that were hidden and a new name are saved in place.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  await onRow(2, "Hide Selected Row");
  await workbench.select("B4");
  const box = workbench.page.getByLabel("Cell or name to go to");
  await box.fill("fourth");
  await box.press("Enter");
  const { book, sheet } = await saved();
  expect(sheet.hiddenRows).toEqual([1]);
  expect(book.definedNames).toEqual([
    { name: "first", formula: "S!$A$1" },
    { name: "fourth", formula: "S!$B$4" },
  ]);
  // Opened again, the row is hidden still.
  const again = await workbench.save();
  await workbench.openFile("again.xlsx", again.bytes);
  expect((await saved()).sheet.hiddenRows).toEqual([1]);
});

test("A file from which a row is deleted keeps its rules, and what could not be kept is counted.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  const before = (await readWorkbook(file, names)).book.sheets[0];
  await workbench.page.evaluate(() => delete document.documentElement.dataset.computed);
  await onRow(2, "Delete Selected Row");
  await workbench.computed();
  const { sheet, notice } = await saved();
  const area = { row: 0, column: 0, rows: 3, columns: 1 };
  expect(sheet.formats).toEqual(before?.formats?.map((format) => ({ ...format, area })));
  expect(sheet.entryRules).toEqual(before?.entryRules?.map((rule) => ({ ...rule, area })));
  expect(notice).toContain(
    "In this file rows or columns were inserted, deleted or moved, so it was written anew:",
  );
  expect(notice).toContain(
    "Left out of the saved file: one entry rule or conditional format of a kind that is not written anew.",
  );
});

test("A table that takes in a row takes its rules along in a file that is saved in place.", async () => {
  const rules =
    '<conditionalFormatting sqref="A2:A3"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>10</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="decimal" operator="greaterThan" showErrorMessage="1" sqref="A2:A3"><formula1>0</formula1></dataValidation></dataValidations>';
  workbench = await served.withFile(
    "runs.xlsx",
    tableFile({ rows: [["Dose"], [1], [2]], rules, styles }),
  );
  await workbench.type("A4", "3");
  const { book, sheet, notice } = await saved();
  const area = { row: 1, column: 0, rows: 3, columns: 1 };
  expect(book.tables[0]?.area.rows).toBe(4);
  expect(sheet.entryRules).toMatchObject([{ area, from: "0" }]);
  expect(sheet.formats).toMatchObject([{ area, formula: "A2>(10)" }]);
  expect(notice).toBe("");
});

test("Rules go along with cells that are cut, leave where these were, and are back by undoing; the saved file says so in place.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  const { page } = workbench;
  const placesOf = (rules: readonly { readonly area: Area }[] = []) =>
    rules.map(({ area }) => areaAddress(area)).join(" ");
  const prompted = async () => {
    const cells = ["A1", "A2", "A3", "A4", "E3", "E4"];
    const said: string[] = [];
    for (const cell of cells) if ((await workbench.read(cell)).message !== "") said.push(cell);
    return said.join(" ");
  };
  await workbench.copy("A3:A4", "Control+x");
  await workbench.paste("E3");
  await expect.poll(async () => (await workbench.read("E4")).value).toBe("4");
  expect(await prompted()).toBe("A1 A2 E3 E4");
  const { sheet, notice } = await saved();
  expect(placesOf(sheet.entryRules)).toBe("A1:A2 E3:E4");
  const [byFormula, scale] = ["formula", "ranking"].map((key) =>
    sheet.formats?.filter((format) => key in format),
  );
  expect(byFormula?.map(({ formula }) => formula)).toEqual(["A1>(10)", "E3>(10)"]);
  expect(placesOf(scale)).toBe("A1:A2 E3:E4");
  // The bars that begin at what a cell holds, which are not shown.
  expect(notice).toBe(
    "Rules of kinds that are not shown here stand in the saved file where they stood, though cells of theirs were put elsewhere.",
  );
  await workbench.select("E3");
  await page.keyboard.press("Control+z");
  await expect.poll(async () => (await workbench.read("A4")).value).toBe("4");
  expect(await prompted()).toBe("A1 A2 A3 A4");
  const undone = await saved();
  expect(placesOf(undone.sheet.entryRules)).toBe("A1:A4");
  expect(undone.notice).toBe("");
});

test("Comments of a file are told, follow their cells, and are saved in place and in a file that is written anew.", async () => {
  workbench = await served.withFile("noted.xlsx", commentedFile());
  const { page } = workbench;
  await workbench.select("B4");
  const told = page.locator("#status .comment");
  expect(await told.textContent()).toBe("Comment: Lab: Is this dry?\nShift B: Yes.");
  await page.mouse.move(...(await workbench.onGrid(150, HEAD.height + 1.5 * USUAL_ROW_HEIGHT)));
  await page.getByText("Comment by Shift A", { exact: true }).waitFor();
  await page.getByText("7 & more, by hand", { exact: true }).waitFor();

  await workbench.copy("B4", "Control+x");
  await workbench.paste("C3");
  await expect.poll(async () => (await workbench.read("C3")).value).toBe("9");
  expect(await told.textContent()).toContain("Is this dry?");
  const inPlace = await saved();
  expect(commentsOf(inPlace.sheet)).toEqual(["B2 Shift A", "C3 undefined"]);
  expect(inPlace.notice).toBe("");

  await page.evaluate(() => delete document.documentElement.dataset.computed);
  await onRow(1, "Delete Selected Row");
  await workbench.computed();
  const anew = await saved();
  expect(commentsOf(anew.sheet)).toEqual(["B1 Shift A", "C2 undefined"]);
  expect(anew.notice).toContain("comments (of a thread its texts)");
  expect(workbench.errors).toEqual([]);
});

test("A comment is written, changed and removed at the selected cell, each in a step to undo, and is in the file that is saved; a thread is only read.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  const { page } = workbench;
  const told = page.locator("#status .comment");
  const menu = page.locator("#comment");
  await workbench.select("B2");
  await menu.locator("summary").press("Enter");
  const fresh = page.getByRole("textbox", { name: "New comment at B2" });
  await expect.poll(() => fresh.evaluate((one) => one === document.activeElement)).toBe(true);
  expect(await seriousFindings(page, "#comment")).toEqual([]);
  await page.keyboard.type("never mind");
  await page.keyboard.press("Escape");
  expect(await fresh.count()).toBe(0);
  await page.keyboard.press("ArrowUp");
  await page.locator("#status .address", { hasText: "B1" }).waitFor();
  await page.keyboard.press("ArrowDown");
  await page.locator("#status .address", { hasText: "B2" }).waitFor();
  await menu.locator("summary").press("Enter");
  await fresh.fill(" weighed\ntwice ");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  expect(await told.textContent()).toBe("Comment: weighed\ntwice");
  await page.keyboard.press("Control+z");
  await told.waitFor({ state: "detached" });
  await page.keyboard.press("Control+y");
  await told.waitFor();
  await workbench.openFile("own.xlsx", file);
  expect(workbench.asked).toEqual([expect.stringContaining("is not saved")]);
  await workbench.select("B2");
  await menu.locator("summary").press("Enter");
  await fresh.fill("weighed");
  await menu.getByRole("button", { name: "Save" }).click();
  const first = await saved();
  expect(first.sheet.comments?.map(({ text }) => text)).toEqual(["weighed"]);
  expect(first.sheet.formats).toHaveLength(2);
  expect(first.notice).toBe("");

  await workbench.openFile("noted.xlsx", commentedFile());
  await workbench.select("B2");
  const place = [HEAD.width + 1.5 * USUAL_COLUMN_WIDTH, HEAD.height + 1.5 * USUAL_ROW_HEIGHT];
  await page.mouse.click(...(await workbench.onGrid(place[0] ?? 0, place[1] ?? 0)), {
    button: "right",
  });
  await page.getByText("Comment", { exact: true }).last().click();
  const its = page.getByRole("textbox", { name: "Comment by Shift A at B2" });
  await expect.poll(() => its.evaluate((one) => one === document.activeElement)).toBe(true);
  expect(await its.inputValue()).toBe("7 & more, by hand");
  await its.fill("a".repeat(32_800));
  await menu.getByRole("button", { name: "Save" }).click();
  expect(await menu.getByRole("alert").textContent()).toContain("at most 32,700 characters");
  await its.fill("7, by hand");
  // A press beside it keeps what was typed for when it opens again.
  await page.mouse.click(...(await workbench.onGrid(place[0] ?? 0, 300)));
  await workbench.select("B2");
  await menu.locator("summary").click();
  expect(await its.inputValue()).toBe("7, by hand");
  await menu.getByRole("button", { name: "Save" }).click();
  expect(await told.textContent()).toBe("Comment by Shift A: 7, by hand");
  await workbench.select("C3");
  await menu.locator("summary").click();
  await menu.getByRole("button", { name: "Remove" }).click();
  expect(await told.count()).toBe(0);
  await workbench.select("B4");
  await menu.locator("summary").click();
  await menu.getByText("can only be read here").waitFor();
  await page.keyboard.press("Escape");
  await workbench.select("D5");
  await page.keyboard.type("12");
  await menu.locator("summary").click();
  await menu.getByText("A cell is being edited.").waitFor();
  expect(await menu.getByRole("textbox").count()).toBe(0);
  await page.mouse.click(...(await workbench.onGrid(place[0] ?? 0, place[1] ?? 0)));
  expect((await workbench.read("D5")).value).toBe("12");
  const { sheet, notice } = await saved();
  expect(commentsOf(sheet)).toEqual(["B2 Shift A", "B4 undefined"]);
  expect(sheet.comments?.map(({ text }) => text)).toContain("Shift A:\n7, by hand");
  expect(notice).toBe("");
  expect(workbench.errors).toEqual([]);
});

test("What is typed into a blank cell takes the look of its column or row, in the grid and in the saved file.", async () => {
  const looks =
    '<numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy-mm-dd"/></numFmts><fonts count="2"><font/><font><b/></font></fonts><cellXfs count="3"><xf/><xf numFmtId="164" fontId="0"/><xf numFmtId="0" fontId="1"/></cellXfs>';
  const styled =
    '<cols><col min="2" max="3" width="12" style="1"/></cols><sheetData><row r="1"><c r="B1"><v>1</v></c></row><row r="3" s="2" customFormat="1"/></sheetData>';
  workbench = await served.withFile(
    "own.xlsx",
    rawWorkbook({ sheets: { S: styled, T: "<sheetData/>" }, styles: looks }),
  );
  await workbench.type("B1", "2");
  await workbench.type("C2", "46113");
  await workbench.type("D2", "2.5");
  await workbench.type("A3", "7");
  await workbench.type("C4", "5%");
  expect((await workbench.read("C2")).value).toBe("2026-04-01");
  const { book, notice } = await saved();
  expect(lookAt(book, 0, 1)).toBeUndefined();
  expect(book.sheets[0]?.cells[1]?.[2]?.style).toBe(book.sheets[0]?.columnStyles?.[2]);
  expect(lookAt(book, 1, 2)).toEqual({ format: "yyyy-mm-dd" });
  expect(lookAt(book, 1, 3)).toBeUndefined();
  expect(lookAt(book, 2, 0)).toMatchObject({ bold: true });
  expect(lookAt(book, 3, 2)).toMatchObject({ format: "0%" });
  expect(notice).toBe("");
});

test("The menus offer nothing that is lost by saving.", async () => {
  workbench = await served.withTemplate("Blank workbook");
  const { page } = workbench;
  await page.locator("[data-u-comp=slide-tab-item]").first().click({ button: "right" });
  await page.getByText("Rename", { exact: true }).waitFor();
  for (const item of ["Change color", "Protect Worksheet", "View All Protection Ranges"])
    expect(await page.getByText(item, { exact: true }).count()).toBe(0);
  await page.keyboard.press("Escape");
  await workbench.select("B3");
  await page.mouse.click(...(await workbench.onGrid(300, 200)), { button: "right" });
  await page.getByText("Freeze", { exact: true }).first().waitFor();
  expect(await page.getByText("Protect Rows And Columns").count()).toBe(0);
});

test("Dates that a new formula picks are saved as dates; those of one that came with the file as they came.", async () => {
  const date = (address: string, day: number) => `<c r="${address}" s="1"><v>${day}</v></c>`;
  const days = rawWorkbook({
    sheets: {
      S: `<sheetData><row r="1">${date("A1", 45_717)}<c r="B1" s="1"><f t="array" ref="B1:B2">_xlfn._xlws.FILTER(A1:A2,A1:A2&gt;0)</f><v>45717</v></c></row><row r="2">${date("A2", 45_718)}<c r="B2"><v>45718</v></c></row></sheetData>`,
    },
    styles:
      '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs>',
  });
  workbench = await served.withFile("days.xlsx", days);
  await workbench.type("D1", "=FILTER(A1:A2,A1:A2>1)");
  const { book } = await saved();
  const formats = [0, 1].map((row) => [0, 1, 3].map((column) => lookAt(book, row, column)?.format));
  expect(formats[0]?.[0]).toBeDefined();
  expect(formats).toEqual([
    [formats[0]?.[0], formats[0]?.[0], formats[0]?.[0]],
    [formats[0]?.[0], undefined, formats[0]?.[0]],
  ]);
});

test("names of one sheet mean what they mean there: opened, typed, written down and saved", async () => {
  const rate = '<c r="A1"><v>2</v></c><c r="B1"><f>rate*10</f><v>20</v></c>';
  const other = rate.replace(">2<", ">3<").replace(">20<", ">30<");
  const both = rawWorkbook({
    sheets: {
      May: `<sheetData><row r="1">${rate}</row></sheetData>`,
      June: `<sheetData><row r="1">${other}</row></sheetData>`,
    },
    definedNames:
      '<definedName name="rate" localSheetId="0">May!$A$1</definedName><definedName name="rate" localSheetId="1">June!$A$1</definedName>',
  });
  workbench = await served.withFile("months.xlsx", both);
  await workbench.type("May!A1", "4");
  expect((await workbench.read("May!B1")).value).toBe("40");
  expect((await workbench.read("June!B1")).value).toBe("30");

  await workbench.type("June!C1", "=rate+May!rate");
  expect((await workbench.read("June!C1")).value).toBe("7");
  await workbench.type("June!D1", "=A1*May!rate");
  await workbench.type("June!E1", "=A1*May!rate");
  await workbench.type("June!E1", "=B1*May!$A$1");
  await workbench.copy("May!B1");
  await workbench.paste("June!F1");
  await expect.poll(async () => (await workbench.read("June!F1")).value).toBe("40");
  await workbench.insertRowAbove("June", 1);
  expect((await workbench.read("June!B2")).value).toBe("30");
  await workbench.type("June!A2", "5");
  expect((await workbench.read("June!B2")).value).toBe("50");

  const { book } = await saved();
  const formulas = book.sheets.map(({ cells }) =>
    Object.values(cells).map((row) => row[1]?.formula),
  );
  expect(formulas.flat()).toEqual(["rate*10", "rate*10"]);
  const written = [2, 3, 4, 5].map((column) => book.sheets[1]?.cells[1]?.[column]?.formula);
  expect(written).toEqual(["rate+May!rate", "A2*May!rate", "B2*May!$A$1", "May!rate*10"]);
});

test("What is being typed, and what it changes, is in the file, by the button or by keys; what a rule refuses is not.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  const { keyboard } = workbench.page;
  const double = async () => (await saved()).book.sheets[1]?.cells[0]?.[0]?.value;
  await workbench.type("T!A1", "=S!A2*2");
  await workbench.select("S!A2");
  await keyboard.type("21");
  await keyboard.press("Enter");
  expect(await double()).toBe(42);
  await workbench.select("A2");
  await keyboard.type("33");
  expect(await double()).toBe(66);
  await workbench.select("A2");
  await keyboard.type("4");
  const [download] = await Promise.all([
    workbench.page.waitForEvent("download"),
    keyboard.press("Control+s"),
  ]);
  const { book } = await readWorkbook(await readFile(await download.path()), names);
  expect(book.sheets[1]?.cells[0]?.[0]?.value).toBe(8);

  workbench = await served.withTemplate("Dose and effluent");
  const { value } = await workbench.read("Dose!B5");
  await keyboard.type("77");
  const dose = (await saved()).book.sheets.find(({ name }) => name === "Dose");
  expect(dose?.cells[4]?.[1]?.value).toBe(Number(value));
  expect((await workbench.read("B5")).value).toBe(value);
});

test("A text in lines is one to formulas and files, is opened in its lines, and its row is as high as they are.", async () => {
  workbench = await served.withFile("own.xlsx", file);
  const { page } = workbench;
  const { keyboard } = page;
  await workbench.select("T!A1");
  await keyboard.type("Dose");
  await keyboard.press("Alt+Enter");
  await keyboard.type("kg/t");
  await keyboard.press("Enter");
  await workbench.type("B1", "=FIND(CHAR(10),A1)");
  expect((await workbench.read("B1")).value).toBe("5");
  const { bytes } = await workbench.save();
  const lines = async (bytes: Uint8Array) => {
    const { book } = await readWorkbook(bytes, names);
    const cell = book.sheets[1]?.cells[0]?.[0];
    return [cell?.value, book.styles[cell?.style ?? ""]?.wrap];
  };
  expect(await lines(bytes)).toEqual(["Dose\nkg/t", true]);

  await workbench.openFile("own.xlsx", bytes);
  await workbench.select("T!A1");
  // Where the second row would begin if the first had the usual height.
  const below = await workbench.onGrid(100, HEAD.height + 1.5 * USUAL_ROW_HEIGHT);
  await expect
    .poll(async () => {
      await workbench.select("C5");
      await page.mouse.click(...below);
      return page.locator("#status .address").textContent();
    })
    .toBe("A1");
  await keyboard.press("F2");
  await keyboard.type(", dry");
  await keyboard.press("Enter");
  await expect.poll(async () => (await workbench.read("A1")).value).toBe("Dose\nkg/t, dry");
  expect(await lines((await workbench.save()).bytes)).toEqual(["Dose\nkg/t, dry", true]);
});
