/** Filtering in the workbench: by its button and by keys; what it hides, computes and draws; what is saved. */
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { parseArea } from "../../src/workbook/address";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
const names = functionNames([]);

const panelOf = ({ page }: WorkbenchPage) => page.locator("#filter");
const told = ({ page }: WorkbenchPage) => page.locator("#shown-rows").textContent();
const numberIn = async (workbench: WorkbenchPage, address: string) =>
  Number((await workbench.read(address)).value);

async function openPanel(workbench: WorkbenchPage, address: string): Promise<void> {
  await workbench.select(address);
  await panelOf(workbench).locator("summary").click();
  await panelOf(workbench).locator("p").first().waitFor();
}

async function press(workbench: WorkbenchPage, button: string): Promise<void> {
  await workbench.page.evaluate(() => delete document.documentElement.dataset.computed);
  await panelOf(workbench).getByRole("button", { name: button }).click();
  await workbench.computed();
}

/** Undoes or does again, and waits until all that follows from it is computed. */
async function step(workbench: WorkbenchPage, keys: string): Promise<void> {
  await workbench.page.evaluate(() => delete document.documentElement.dataset.computed);
  await workbench.page.keyboard.press(keys);
  await workbench.computed();
}

test("the table of a template is filtered by several columns, by keys too, and saved so", async () => {
  const workbench = await served.withTemplate("Dose and effluent");
  const { page } = workbench;
  const panel = panelOf(workbench);
  await workbench.type("Log!K41", "=SUBTOTAL(9,D5:D34)");
  await workbench.type("K42", "=SUM(D5:D34)");
  const all = await numberIn(workbench, "K42");
  expect(await numberIn(workbench, "K41")).toBe(all);
  await workbench.select("Thirty days!B5");
  const chart = page.locator(".chart[role=img]").first();
  await chart.waitFor();
  const drawn = (await chart.innerHTML()).length;

  await workbench.select("Log!D20");
  await page.locator("#filter summary").focus();
  await page.keyboard.press("Enter");
  await panel.getByLabel("Column").waitFor();
  for (const keys of ["Tab", "Tab", "is g", "Tab", "3200"])
    await (keys === "Tab" ? page.keyboard.press(keys) : page.keyboard.type(keys));
  await page.evaluate(() => delete document.documentElement.dataset.computed);
  await page.keyboard.press("Enter");
  await workbench.computed();
  expect(await told(workbench)).toBe("Showing 26 of 30 rows");
  const some = await numberIn(workbench, "K41");
  expect(await numberIn(workbench, "K42")).toBe(all);

  await openPanel(workbench, "A20");
  expect(await panel.locator("option", { hasText: "filtered" }).allTextContents()).toEqual([
    "D (Pump (L/h)), filtered",
  ]);
  await panel.getByLabel("Search").fill("2025-09-2");
  await panel.getByLabel("2025-09-20 1").uncheck();
  await press(workbench, "Apply");
  expect(await told(workbench)).toBe("Showing 8 of 30 rows");
  await workbench.show("Thirty days");
  await expect.poll(async () => (await chart.innerHTML()).length).toBeLessThan(drawn);

  const { book } = await readWorkbook((await workbench.save()).bytes, names);
  const log = book.sheets.find(({ name }) => name === "Log");
  const pumped = Array.from({ length: 30 }, (_, at) => Number(log?.cells[4 + at]?.[3]?.value));
  expect(some).toBe(pumped.filter((one) => one > 3200).reduce((sum, one) => sum + one, 0));
  expect(log?.hiddenRows).toHaveLength(22);
  expect(book.tables.find(({ name }) => name === "log")?.filter).toMatchObject({
    area: parseArea("A4:G34"),
    columns: [
      { column: 0, criterion: { kind: "values", texts: [], dates: { length: 8 } } },
      { column: 3, criterion: { conditions: [{ operator: "greaterThan", value: "3200" }] } },
    ],
  });

  await workbench.select("Log!A5");
  await step(workbench, "Control+z");
  await expect.poll(() => told(workbench)).toBe("Showing 26 of 30 rows");
  await step(workbench, "Control+z");
  await expect.poll(() => told(workbench)).toBe("");
  await step(workbench, "Control+y");
  await expect.poll(() => told(workbench)).toBe("Showing 26 of 30 rows");

  // Of rows that are deleted those that are hidden stay, and formulas know.
  const box = page.getByLabel("Cell or name to go to");
  await box.fill("15:20");
  await box.press("Enter");
  await page.locator('[aria-label="Cell or name to go to"][value="15:20"]').waitFor();
  await page.mouse.click(...(await workbench.onGrid(20, 430)), { button: "right" });
  await page.evaluate(() => delete document.documentElement.dataset.computed);
  await page.getByText("Delete Selected Row").click();
  await workbench.computed();
  await expect.poll(() => told(workbench)).toBe("Showing 23 of 27 rows");
  const gone = [14, 17, 18].reduce((sum, row) => sum + Number(pumped[row - 4]), 0);
  expect(await numberIn(workbench, "K39")).toBe(all - gone);
  expect(await numberIn(workbench, "K38")).toBe(some - gone);
  await step(workbench, "Control+z");
  await expect.poll(() => told(workbench)).toBe("Showing 26 of 30 rows");
  expect(await numberIn(workbench, "K42")).toBe(all);
  await workbench.type("A35", "2025-10-01");
  await expect.poll(() => told(workbench)).toBe("Showing 27 of 31 rows");
  expect(workbench.errors).toEqual([]);
});

test("the filter of a file is shown as it is set, goes on, and is changed in place", async () => {
  const row = (index: number, lot: string, mass: number, more = "") =>
    `<row r="${index}"${more}><c r="A${index}" t="str"><v>${lot}</v></c><c r="B${index}"><v>${mass}</v></c></row>`;
  const hidden = ' hidden="1"';
  const heads =
    '<row r="1"><c r="A1" t="str"><v>Lot</v></c><c r="B1" t="str"><v>Mass</v></c></row>';
  const colour = '<filterColumn colId="0"><colorFilter dxfId="0"/></filterColumn>';
  const rows = [row(2, "a", 1), row(3, "b", 2, hidden), row(4, "c", 3), row(5, "d", 4, hidden)];
  const total = '<row r="7"><c r="B7"><f>SUBTOTAL(9,B2:B5)</f></c></row>';
  const apart = [10, 11].map((index) => row(index, `grade ${index}`, index));
  const sheet = `<sheetData>${heads}${rows.join("")}${total}${apart.join("")}</sheetData><autoFilter ref="A1:B5">${colour}</autoFilter>`;
  const workbench = await served.withFile("lots.xlsx", rawWorkbook({ sheets: { Lots: sheet } }));
  const { page } = workbench;
  expect(await told(workbench)).toBe("Showing 2 of 4 rows");
  expect(await numberIn(workbench, "B7")).toBe(1 + 3);

  await openPanel(workbench, "A2");
  const ways = panelOf(workbench).getByLabel("Show rows where it");
  expect(await ways.locator("option:checked").textContent()).toBe("is as its file asks");
  await panelOf(workbench).getByLabel("Column").selectOption("B (Mass)");
  await ways.selectOption("is at least");
  await panelOf(workbench).getByLabel("Value").fill("");
  await panelOf(workbench).getByRole("button", { name: "Apply" }).click();
  await panelOf(workbench).getByText("Give a value to compare with.").waitFor();
  await panelOf(workbench).getByLabel("Value").fill("3");
  await press(workbench, "Apply");
  expect(await told(workbench)).toBe("Showing 1 of 4 rows");
  expect(await numberIn(workbench, "B7")).toBe(3);

  const { bytes, notice } = await workbench.save();
  expect(notice).toBe("");
  const parts = unzipSync(bytes);
  const saved = strFromU8(parts["xl/worksheets/sheet1.xml"] as Uint8Array);
  expect(saved).toContain(
    `<autoFilter ref="A1:B5">${colour}<filterColumn colId="1"><customFilters><customFilter operator="greaterThanOrEqual" val="3"/></customFilters></filterColumn></autoFilter>`,
  );
  expect(saved.match(/<row r="\d" hidden="1"/g)).toHaveLength(3);

  await openPanel(workbench, "A11");
  expect(await panelOf(workbench).locator("p").first().textContent()).toBe(
    "A1:B5 is filtered, and a sheet holds one filter beside those of its tables.",
  );
  expect(await seriousFindings(page)).toEqual([]);
  await press(workbench, "Clear it and filter here");
  expect(await told(workbench)).toBe("");
  expect(await panelOf(workbench).getByLabel("Column").locator("option").count()).toBe(2);
  expect(await panelOf(workbench).locator("p").first().textContent()).toBe("A11:B11");
  await page.keyboard.press("Escape");
  await workbench.select("B2");
  await step(workbench, "Control+z");
  await expect.poll(() => told(workbench)).toBe("Showing 1 of 4 rows");

  await openPanel(workbench, "B2");
  await press(workbench, "Clear all");
  expect(await told(workbench)).toBe("");
  expect(await numberIn(workbench, "B7")).toBe(10);
  expect(workbench.errors).toEqual([]);
});

test("what is pasted, filled, cleared and formatted goes into rows that show, or it is said why not", async () => {
  const number = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;
  const line = (row: number, kind: string, more = "") =>
    `<row r="${row}"${more}><c r="A${row}" t="str"><v>${kind}</v></c>${number(`B${row}`, row)}${number(`C${row}`, row)}</row>`;
  const hidden = ' hidden="1"';
  const rows = [
    line(1, "Kind"),
    line(2, "on"),
    line(3, "off", hidden),
    line(4, "on"),
    line(5, "off", hidden),
    line(6, "on"),
    `<row r="10">${number("E10", 100)}</row><row r="11">${number("E11", 200)}</row>`,
  ];
  const filter =
    '<autoFilter ref="A1:C6"><filterColumn colId="0"><filters><filter val="on"/></filters></filterColumn></autoFilter>';
  const sheet = `<sheetData>${rows.join("")}</sheetData>${filter}`;
  const workbench = await served.withFile("lots.xlsx", rawWorkbook({ sheets: { Lots: sheet } }));
  const { page } = workbench;
  const press = async (range: string, key: string) => {
    await workbench.select(range);
    await page.keyboard.press(key);
  };
  const said = () => page.locator("#status .message").textContent();

  await workbench.copy("E10:E11");
  await workbench.paste("B2");
  await expect.poll(() => numberIn(workbench, "B4")).toBe(200);
  await press("B4", "Control+d");
  await expect.poll(() => numberIn(workbench, "B4")).toBe(100);
  await page.evaluate(() => navigator.clipboard.writeText("7"));
  await workbench.paste("C2:C6");
  await expect.poll(() => numberIn(workbench, "C6")).toBe(7);
  await press("C4:C6", "Delete");
  await expect.poll(async () => (await workbench.read("C6")).value).toBe("");
  await workbench.select("B2:B6");
  await page.locator("#format summary").click();
  await page.locator("#format").getByRole("button", { name: "Percent" }).click();
  await expect.poll(() => page.locator("#format-shown").textContent()).toContain("10000 %");
  await page.keyboard.press("Escape");

  await workbench.paste("B3");
  await expect.poll(said).toBe("A filter hides the selected cells. Select cells that show.");
  await press("B2:B6", "Control+x");
  await expect.poll(said).toMatch(/^Nothing was cut: a filter hides rows in the selection\. /);
  await workbench.copy("E10:E11", "Control+x");
  await workbench.paste("B2");
  await expect.poll(said).toMatch(/^Nothing was moved: a filter hides rows there\. /);

  const { book } = await readWorkbook((await workbench.save()).bytes, names);
  const [lots] = book.sheets;
  const column = (at: number) =>
    [1, 2, 3, 4, 5].map((row) => {
      const { value = null, style } = lots?.cells[row]?.[at] ?? {};
      return [value, book.styles[style ?? ""]?.format ?? ""];
    });
  expect(column(1)).toEqual([
    [100, "0 %"],
    [3, ""],
    [100, "0 %"],
    [5, ""],
    [6, "0 %"],
  ]);
  expect(column(2).map(([value]) => value)).toEqual([7, 3, null, 5, null]);
  expect(lots?.cells[9]?.[4]?.value).toBe(100);
  expect(workbench.errors).toEqual([]);
});

test.each([
  ["light", {}],
  ["dark, 320 pixels wide", { colorScheme: "dark", viewport: { width: 320, height: 640 } }],
  ["forced colours", { forcedColors: "active" }],
] as const)(
  "in %s the panel has no serious fault of accessibility, and fits",
  async (_, options) => {
    const workbench = await served.withTemplate("Dose and effluent");
    await workbench.look(options);
    await openPanel(workbench, "Log!A8");
    expect(await seriousFindings(workbench.page)).toEqual([]);
    const box = await panelOf(workbench).locator("form").boundingBox();
    const { width, height } = workbench.page.viewportSize() ?? { width: 0, height: 0 };
    expect(box?.x).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(height);
  },
);
