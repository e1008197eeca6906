/** Sorting in the workbench: by its button, by keys, by the menu of cells; and what is saved afterwards. */
import { readFile } from "node:fs/promises";
import { beforeAll, describe, expect, test } from "vitest";
import { areaAddress } from "../../src/workbook/address";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import { cellsXml, tableFile } from "./shared/table-file";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();

const menuOf = ({ page }: WorkbenchPage) => page.locator("#sort");

async function openMenu(workbench: WorkbenchPage, address: string): Promise<string[]> {
  await workbench.select(address);
  await menuOf(workbench).locator("summary").click();
  await menuOf(workbench).locator("li").first().waitFor();
  return menuOf(workbench).locator("p").allTextContents();
}

async function sort(workbench: WorkbenchPage, address: string, direction: string): Promise<void> {
  await openMenu(workbench, address);
  await workbench.page.evaluate(() => delete document.documentElement.dataset.computed);
  await menuOf(workbench).getByRole("button", { name: direction }).click();
  await workbench.computed();
}

async function valuesOf(workbench: WorkbenchPage, column: string, from: number, to: number) {
  const values: string[] = [];
  for (let row = from; row <= to; row++)
    values.push((await workbench.read(`${column}${row}`)).value);
  return values;
}

describe("the table of a template", () => {
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
  });

  test("is sorted by keys alone, and its rows stay whole", async () => {
    const { page } = workbench;
    await workbench.select("Log!D20");
    await page.locator("#sort summary").focus();
    await page.keyboard.press("Enter");
    await menuOf(workbench).locator("li").first().waitFor();
    expect(await menuOf(workbench).locator("p").textContent()).toBe(
      "A5:G34 by column D (Pump (L/h))",
    );
    await page.keyboard.press("Tab");
    await page.evaluate(() => delete document.documentElement.dataset.computed);
    await page.keyboard.press("Enter");
    await workbench.computed();
    expect(await valuesOf(workbench, "D", 4, 7)).toEqual(["Pump (L/h)", "2730", "3040", "3040"]);
    const [, day] = await valuesOf(workbench, "A", 4, 5);
    await sort(workbench, "A30", "Ascending");
    expect((await workbench.read("A5")).value).toBe("2025-09-01");
    expect((await workbench.read("D5")).value).toBe("3380");
    await workbench.select("A5");
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await workbench.read("A5")).value).toBe(day);
  });

  test("changes the charts over it, not its sums, and undone and done again it goes and comes", async () => {
    const { page } = workbench;
    await workbench.select("A5");
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await workbench.read("A5")).value).toBe("2025-09-01");
    await workbench.select("Thirty days!B5");
    const highest = (await workbench.read("B5")).value;
    const chart = page.locator(".chart[role=img]").first();
    await chart.waitFor();
    const drawn = async () => (await chart.innerHTML()).replaceAll(/plot-clip-\d+/g, "clip");
    const before = await drawn();
    await workbench.select("Log!A5");
    await sort(workbench, "A5", "Descending");
    await workbench.select("Thirty days!B5");
    await expect.poll(drawn).not.toBe(before);
    const after = await drawn();
    expect((await workbench.read("B5")).value).toBe(highest);
    await page.keyboard.press("Control+z");
    await expect.poll(drawn).toBe(before);
    await page.keyboard.press("Control+y");
    await expect.poll(drawn).toBe(after);
  });

  test("still takes in what is typed below it", async () => {
    const { page } = workbench;
    await workbench.select("Log!A35");
    await workbench.type("A35", "2025-10-01");
    expect((await openMenu(workbench, "B9"))[0]).toBe("A5:G35 by column B (Paper (t/d))");
    await page.keyboard.press("Escape");
  });

  test("waits for what is being typed", async () => {
    const { page } = workbench;
    await workbench.select("B6");
    await page.keyboard.type("321");
    await menuOf(workbench).locator("summary").click();
    await menuOf(workbench).locator("p", { hasText: "A cell is being edited." }).waitFor();
    expect(await menuOf(workbench).getByRole("button").count()).toBe(0);
    await menuOf(workbench).locator("summary").click();
    await page.locator('canvas[id^="univer-sheet-main"]').click({ position: { x: 60, y: 40 } });
    expect((await workbench.read("B6")).value).toBe("321");
  });

  test("leaves alone what a formula spilled beside it, and says why", async () => {
    expect(await openMenu(workbench, "I10")).toEqual([
      expect.stringMatching(/^The formula in I5 fills I5:I\d+: rows with a part of that cannot be/),
    ]);
    expect(await menuOf(workbench).getByRole("button").count()).toBe(0);
    await workbench.page.keyboard.press("Escape");
    expect(workbench.errors).toEqual([]);
  });
});

describe("a workbook from elsewhere", () => {
  const row = (index: number, cells: string) => `<row r="${index}">${cells}</row>`;
  const text = (address: string, value: string, style = "") =>
    `<c r="${address}" t="str"${style}><v>${value}</v></c>`;
  const number = (address: string, value: number, style = "") =>
    `<c r="${address}"${style}><v>${value}</v></c>`;
  const computed = (address: string, formula: string) => `<c r="${address}">${formula}</c>`;
  const cells = [
    row(1, ["Lot", "Day", "Mass", "Price", "Cost", "Held"].map((title, at) => text(`${"ABCDEF"[at]}1`, title)).join("")), // biome-ignore format: a row a line
    row(2, text("A2", "lot 10") + number("B2", 45_300, ' s="1"') + number("C2", 3) + number("D2", 7) + computed("E2", '<f t="shared" ref="E2:E5" si="0">C2*D2*$H$1+Other!A1</f>') + computed("F2", "<f>WETEND.DOSE.TARGET(C2,0.5)</f>")), // biome-ignore format: a row a line
    row(3, text("A3", "Lot 9") + number("B3", 45_200, ' s="1"') + number("C3", 8, ' s="2"') + number("D3", 2) + computed("E3", '<f t="shared" si="0"/>') + computed("F3", "<f>WETEND.DOSE.TARGET(C3,0.5)</f>")), // biome-ignore format: a row a line
    row(4, text("A4", "B") + number("B4", 45_250, ' s="1"') + text("C4", "12") + number("D4", 1) + computed("E4", '<f t="shared" si="0"/>')), // biome-ignore format: a row a line
    row(5, number("A5", 4) + number("B5", 45_100, ' s="1"') + number("D5", 5) + computed("E5", '<f t="shared" si="0"/>') + computed("F5", "<f>WETEND.DOSE.TARGET(C5+1,0.5)</f>")), // biome-ignore format: a row a line
    row(6, text("A6", "All") + computed("E6", "<f>SUM(E2:E5)</f>")),
    row(9, text("A9", "b") + number("B9", 2)),
    row(10, text("A10", "a") + number("B10", 1)),
  ];
  const sheet = `<sheetData>${cells.join("")}</sheetData><mergeCells count="1"><mergeCell ref="B9:B10"/></mergeCells>`;
  const styles =
    '<fills count="3"><fill/><fill/><fill><patternFill patternType="solid"><fgColor rgb="FFFFEE00"/></patternFill></fill></fills><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="0" fillId="2" applyFill="1"/></cellXfs>';
  const other = `<sheetData>${[1, 2, 3, 4, 5].map((at) => row(at, number(`A${at}`, at * 100))).join("")}</sheetData>`;
  const names = functionNames(["DOSE.TARGET"]);
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    const parts = {
      "xl/worksheets/_rels/sheet1.xml.rels":
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments" Target="../comments1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://example.org/" TargetMode="External"/></Relationships>',
      "xl/comments1.xml":
        '<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author/></authors><commentList><comment ref="C2" authorId="0"><text><t>weighed twice</t></text></comment></commentList></comments>',
    };
    const file = { sheets: { Lots: sheet, Other: other }, styles, parts };
    workbench = await served.withFile("lots.xlsx", rawWorkbook(file));
    await workbench.type("Lots!H1", "2");
  });

  test("stands by numbers, texts and blanks last, without its head and its total", async () => {
    expect((await openMenu(workbench, "C3"))[0]).toBe("A2:F5 by column C (Mass)");
    await workbench.page.keyboard.press("Escape");
    await sort(workbench, "C3", "Descending");
    expect(await valuesOf(workbench, "C", 1, 6)).toEqual(["Mass", "12", "8", "3", "", ""]);
    expect(await workbench.page.locator("#notice").textContent()).toBe(
      "The links of this sheet stay where they are in the file, and do not go with the sorted rows.",
    );
    const comment = workbench.page.locator("#status .comment", { hasText: "weighed twice" });
    await workbench.select("C4");
    await comment.waitFor();
    await workbench.page.keyboard.press("Control+z");
    await workbench.select("C2");
    await comment.waitFor();
    await sort(workbench, "B3", "Ascending");
    expect(await valuesOf(workbench, "A", 2, 5)).toEqual(["4", "Lot 9", "B", "lot 10"]);
    await sort(workbench, "A3", "Ascending");
    expect(await valuesOf(workbench, "A", 1, 6)).toEqual(["Lot", "4", "B", "lot 10", "Lot 9", "All"]); // biome-ignore format: a column
  });

  test("computes each row from its own cells, and from where it read on other sheets", async () => {
    expect(await valuesOf(workbench, "E", 2, 6)).toEqual(["400", "324", "142", "232", "1098"]);
    expect(await valuesOf(workbench, "F", 2, 5)).toEqual(["2", "", "6", "16"]);
  });

  test("is saved in place with the new order, each cell with its look", async () => {
    const [download] = await Promise.all([
      workbench.page.waitForEvent("download"),
      workbench.page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    expect(await workbench.page.locator("#notice").isHidden()).toBe(true);
    const { book } = await readWorkbook(await readFile(await download.path()), names);
    const [lots] = book.sheets;
    const column = (at: number) =>
      [1, 2, 3, 4, 5].map(
        (row) => lots?.cells[row]?.[at]?.formula ?? lots?.cells[row]?.[at]?.value,
      );
    expect(column(0)).toEqual([4, "B", "lot 10", "Lot 9", "All"]);
    expect(lots?.comments?.map(({ area }) => areaAddress(area))).toEqual(["C4"]);
    expect(column(2)).toEqual([undefined, "12", 3, 8, undefined]);
    expect(column(4)).toEqual([
      "C2*D2*$H$1+Other!A4",
      "C3*D3*$H$1+Other!A3",
      "C4*D4*$H$1+Other!A1",
      "C5*D5*$H$1+Other!A2",
      "SUM(E2:E5)",
    ]);
    expect(column(5)).toEqual([
      "WETEND.DOSE.TARGET(C2+1,0.5)",
      undefined,
      "WETEND.DOSE.TARGET(C4,0.5)",
      "WETEND.DOSE.TARGET(C5,0.5)",
      undefined,
    ]);
    const fills = [1, 2, 3, 4].map((row) => book.styles[lots?.cells[row]?.[2]?.style ?? ""]?.fill);
    expect(fills).toEqual([undefined, undefined, undefined, "#ffee00"]);
  });

  test("has the new order in the copy with values only", async () => {
    const pane = workbench.page.locator("#pane");
    await pane.getByRole("tab", { name: "Working" }).click();
    const [download] = await Promise.all([
      workbench.page.waitForEvent("download"),
      pane.getByRole("button", { name: "Copy with values only" }).click(),
    ]);
    const { book } = await readWorkbook(await readFile(await download.path()), names);
    const line = (row: number) => [0, 5].map((column) => book.sheets[0]?.cells[row]?.[column]);
    expect(line(1)).toMatchObject([{ value: 4 }, { value: 2 }]);
    expect(line(4)).toMatchObject([{ value: "Lot 9" }, { value: 16 }]);
    expect(line(4)[1]?.formula).toBeUndefined();
  });

  test("says in its notice why merged cells are not sorted from the menu of a cell", async () => {
    const { page } = workbench;
    await workbench.select("A9");
    const canvas = await page.locator('canvas[id^="univer-sheet-main"]').boundingBox();
    const at = { x: (canvas?.x ?? 0) + 80, y: (canvas?.y ?? 0) + 20 + 8.5 * 24 };
    await page.mouse.click(at.x, at.y, { button: "right" });
    await page.getByText("Sort ascending").click();
    await page.locator("#notice", { hasText: "The cells B9:B10 are merged" }).waitFor();
    expect(await valuesOf(workbench, "A", 9, 10)).toEqual(["b", "a"]);
    await workbench.select("A3");
    await page.mouse.click(at.x, at.y - 6 * 24, { button: "right" });
    await page.getByText("Sort descending").click();
    await expect.poll(() => valuesOf(workbench, "A", 2, 5)).toEqual(["Lot 9", "lot 10", "B", "4"]);
    expect(await page.locator("#notice").textContent()).toMatch(/^The links of this sheet stay/);
    expect(workbench.errors).toEqual([]);
  });
});

test("a log is put in the order of a column that one formula fills, and back", async () => {
  const rows = [
    ["Day", "Dose", "Load", "Above 300"],
    ["Mon", 7],
    ["Tue", "off"],
    ["Wed", 9],
    ["Thu", 8],
  ];
  const workbench = await served.withFile(
    "log.xlsx",
    rawWorkbook({ sheets: { Log: cellsXml(rows) } }),
  );
  const { page } = workbench;
  await workbench.type("C2", "=WETEND.EFFLUENT.COD(B2:B5,0.9,300,1.2)");
  await workbench.type("D2", "=FILTER(A2:A5,IFERROR(C2:C5>300,FALSE))");
  expect(await openMenu(workbench, "C3")).toEqual([
    "A2:D5 by column C (Load)",
    "What one formula fills in many rows stays, and is computed anew.",
  ]);
  await page.keyboard.press("Escape");
  await sort(workbench, "C3", "Ascending");
  expect(await valuesOf(workbench, "A", 2, 5)).toEqual(["Mon", "Thu", "Wed", "Tue"]);
  expect(await valuesOf(workbench, "C", 2, 5)).toEqual(["252", "288", "324", "#VALUE!"]);
  expect((await workbench.read("D2")).value).toBe("Wed");
  expect(await openMenu(workbench, "D2")).toEqual([
    "The formula in D2 does not answer row by row: sort by another column.",
  ]);
  await page.keyboard.press("Escape");
  await workbench.select("A2");
  await page.keyboard.press("Control+z");
  await expect.poll(() => valuesOf(workbench, "A", 2, 5)).toEqual(["Mon", "Tue", "Wed", "Thu"]);
  await expect.poll(() => valuesOf(workbench, "C", 2, 5)).toEqual(["252", "#VALUE!", "324", "288"]);
  expect(workbench.errors).toEqual([]);
});

test("rows that are hidden stay where they are, and a column of formulas follows its names", async () => {
  const doses = [9, 8, 1, 5].map((dose) => [dose, "=Runs[[#This Row],[Dose]]*10"]);
  const file = tableFile({ rows: [["Dose", "Ten"], ...doses], hidden: [3] });
  const workbench = await served.withFile("runs.xlsx", file);
  const { page } = workbench;
  await sort(workbench, "A4", "Ascending");
  expect(await valuesOf(workbench, "A", 1, 5)).toEqual(["Dose", "1", "8", "5", "9"]);
  expect(await valuesOf(workbench, "B", 1, 5)).toEqual(["Ten", "10", "80", "50", "90"]);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  const { book } = await readWorkbook(await readFile(await download.path()), functionNames([]));
  for (const at of [1, 2, 3, 4])
    expect(book.sheets[0]?.cells[at]?.[1]?.formula).toBe("Runs[[#This Row],[Dose]]*10");
  expect(book.tables).toHaveLength(1);
  expect(workbench.errors).toEqual([]);
});

describe.each([
  ["light", {}],
  ["dark, 320 pixels wide", { colorScheme: "dark", viewport: { width: 320, height: 640 } }],
  ["forced colours", { forcedColors: "active" }],
] as const)("in %s", (_, options) => {
  test("what is offered has no serious fault of accessibility, and fits", async () => {
    const workbench = await served.withTemplate("Dose and effluent");
    await workbench.look(options);
    await openMenu(workbench, "A8");
    expect(await seriousFindings(workbench.page)).toEqual([]);
    const box = await menuOf(workbench).locator("ul").boundingBox();
    const { width } = workbench.page.viewportSize() ?? { width: 0 };
    expect(box?.x).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
  });
});
