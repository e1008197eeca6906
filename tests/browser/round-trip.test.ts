import { readFile } from "node:fs/promises";
import ExcelJS from "exceljs";
import { expect, inject, test } from "vitest";
import type { Book } from "../../src/workbook/book";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();

const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));

/** A workbook as another library writes it. */
async function foreign(): Promise<Buffer> {
  const workbook = new ExcelJS.Workbook();
  const log = workbook.addWorksheet("Mill log");
  log.addTable({
    name: "Log_1",
    ref: "A3",
    headerRow: true,
    columns: [{ name: "Day" }, { name: "Starch (kg/t)" }, { name: "Share" }],
    rows: [
      [new Date("2026-03-01"), 6, 0.8],
      [new Date("2026-03-02"), 7, 0.9],
    ],
  });
  log.getCell("A1").value = "Log of the mill";
  log.getCell("D4").value = { formula: "_xldudf_WETEND_DOSE_TARGET(B4,C4)" };
  log.getCell("D5").value = { formula: "B5/C5" };
  log.getCell("E4").value = { formula: "B4*2" };
  log.getCell("E5").value = { sharedFormula: "E4" };
  const sums = workbook.addWorksheet("Sums");
  sums.getCell("B2").value = { formula: "SUM(Log_1[Starch (kg/t)])" };
  sums.getCell("B3").value = { formula: "'Mill log'!D4+dose" };
  sums.getCell("B4").value = { formula: 'IF(B2>=12,"enough","--TRUE")' };
  sums.getCell("B5").value = { formula: "1/0" };
  workbook.definedNames.add("'Mill log'!$B$4", "dose");
  return Buffer.from(await workbook.xlsx.writeBuffer());
}

const formulas = ({ sheets }: Book) =>
  Object.fromEntries(
    sheets.flatMap(({ name, cells }) =>
      Object.entries(cells).flatMap(([row, line]) =>
        Object.entries(line as Book["sheets"][number]["cells"][number]).flatMap(([column, cell]) =>
          cell.formula === undefined ? [] : [[`${name} ${row},${column}`, cell.formula]],
        ),
      ),
    ),
  );

async function saved({ page }: WorkbenchPage): Promise<Book> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  return (await readWorkbook(await readFile(await download.path()), names)).book;
}

test("a workbook of another library keeps its formulas, through edits and through an inserted row", async () => {
  const bytes = await foreign();
  const before = (await readWorkbook(bytes, names)).book;
  const workbench = await served.withFile("log.xlsx", bytes);

  expect((await workbench.read("Mill log!D4")).value).toBe("7.5");
  expect((await workbench.read("Sums!B2")).value).toBe("13");
  expect((await workbench.read("Sums!B3")).value).toBe("13.5");
  expect((await workbench.read("Sums!B4")).value).toBe("enough");
  expect((await workbench.read("Sums!B5")).value).toBe("#DIV/0!");

  await workbench.type("Mill log!B4", "8");
  expect((await workbench.read("Sums!B2")).value).toBe("15");
  const edited = await saved(workbench);
  expect(formulas(edited)).toEqual(formulas(before));
  expect(edited.sheets[0]?.cells[3]?.[1]?.value).toBe(8);
  expect(edited.sheets[1]?.cells[1]?.[1]?.value).toBe(15);
  expect(edited.tables).toEqual(before.tables);

  // One row above the table, and one into it.
  await workbench.insertRowAbove("Mill log", 2);
  await workbench.insertRowAbove("Mill log", 6);
  expect((await workbench.read("Mill log!D5")).value).toBe("10");
  await workbench.type("Mill log!B6", "1");
  expect((await workbench.read("Sums!B2")).value).toBe("16");
  const grown = await saved(workbench);
  const notice = workbench.page.getByRole("alert");
  expect(await notice.textContent()).toContain("written anew");
  expect(formulas(grown)).toEqual({
    "Mill log 4,3": "WETEND.DOSE.TARGET(B5,C5)",
    "Mill log 4,4": "B5*2",
    "Mill log 6,3": "B7/C7",
    "Mill log 6,4": "B7*2",
    "Sums 1,1": "SUM(Log_1[Starch (kg/t)])",
    "Sums 2,1": "'Mill log'!D5+dose",
    "Sums 3,1": 'IF(B2>=12,"enough","--TRUE")',
    "Sums 4,1": "1/0",
  });
  expect(grown.tables).toEqual(
    before.tables.map((table) => ({ ...table, area: { row: 3, column: 0, rows: 4, columns: 3 } })),
  );
  expect(grown.definedNames).toEqual([{ name: "dose", formula: "'Mill log'!$B$5" }]);
  expect(workbench.errors).toEqual([]);
});

test("a formula is edited as it was written: a table keeps its name, and what spills its mark", async () => {
  const bytes = await foreign();
  const workbench = await served.withFile("log.xlsx", bytes);
  const { page } = workbench;
  /** Behind what the cell holds already. */
  const add = async (address: string, text: string) => {
    await workbench.select(address);
    const nextRow = new RegExp(`${Number(/\d+$/.exec(address)) + 1}$`);
    await page.keyboard.press("F2");
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await page.locator("#status .address", { hasText: nextRow }).waitFor();
  };
  await add("Sums!B2", "");
  await workbench.openFile("log.xlsx", bytes);
  expect(workbench.asked).toEqual([]);

  await workbench.type("Sums!D2", "=SEQUENCE(3)");
  await workbench.type("Sums!E2", "=SUM(D2#)");
  await add("Sums!E2", "+1");
  await expect.poll(async () => (await workbench.read("E2")).value).toBe("7");
  // Cells that a formula filled show it, and stay filled when they are opened and left.
  await add("Sums!D3", "");
  await add("Sums!B2", "+1");
  await expect.poll(async () => (await workbench.read("B2")).value).toBe("14");
  expect(await workbench.read("D2")).toEqual({ value: "1", message: "" });
  expect(await workbench.read("D3")).toEqual({ value: "2", message: "" });
  await workbench.insertRowAbove("Mill log", 5);
  await workbench.type("Mill log!B5", "10");
  expect((await workbench.read("Sums!B2")).value).toBe("24");
  expect(formulas(await saved(workbench))).toMatchObject({
    "Sums 1,1": "SUM(Log_1[Starch (kg/t)])+1",
    "Sums 1,4": "SUM(D2#)+1",
  });
  expect(workbench.errors).toEqual([]);
});
