/** What people add of their own in the workbench: a blank workbook, rows below a table, sheets. */
import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { serveWorkbench } from "./served-workbench";
import { tableFile } from "./shared/table-file";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
let workbench: WorkbenchPage;

const open = async (title: string) => {
  workbench = await served.withTemplate(title);
};
const openTable = async (file: Parameters<typeof tableFile>[0]) => {
  workbench = await served.withFile("runs.xlsx", tableFile(file));
};
const value = async (address: string) => (await workbench.read(address)).value;
const saved = async () => {
  const { bytes, notice } = await workbench.save();
  return { ...(await readWorkbook(bytes, functionNames([]))), notice };
};

test("A blank workbook has one empty sheet, takes formulas and is saved under a plain name.", async () => {
  await open("Blank workbook");
  expect(await workbench.page.title()).toBe("Blank workbook · Dosewright workbench");
  await workbench.type("A1", "=WETEND.TRIAL.REPLICATES(5%,4%,,,4)");
  expect(await value("A1")).toBe("35");
  const [download] = await Promise.all([
    workbench.page.waitForEvent("download"),
    workbench.page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("workbook.xlsx");
  expect((await readFile(await download.path())).length).toBeGreaterThan(1000);
});

test("A formula that is typed finds our functions by any word, and reads out the argument it is at.", async () => {
  await open("Blank workbook");
  const { page } = workbench;
  await workbench.select("B2");
  await page.keyboard.type("=rep");
  await page.getByText("WETEND.TRIAL.REPLICATES").waitFor();
  for (let down = 0; down < 3; down++) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await page.getByText("Coefficient of variation from batch to batch").waitFor();
  await page.keyboard.type("5%,");
  await page.getByText("Difference between a treatment and the control").waitFor();
  expect(await page.getByText("Coefficient of variation from batch to batch").isVisible()).toBe(
    false,
  );
  await page.keyboard.type("4%,,,4)");
  await page.keyboard.press("Enter");
  await page.locator("#status .address", { hasText: /^B3$/ }).waitFor();
  await expect.poll(() => value("B2")).toBe("35");
});

test("A sheet grows where an answer, a reference or a person goes beyond its edge.", async () => {
  await open("Blank workbook");
  await workbench.type("A1", "=WETEND.UNCERTAINTY.SAMPLE(1,2,3,10000,7)");
  await workbench.type("B1", "=COUNT(A1#)+SUM(SEQUENCE(2000))");
  expect(await value("B1")).toBe("2011000");
  expect(Number(await value("A10000"))).toBeGreaterThan(1);
  await workbench.type("C1", "=ZZ30000+1");
  expect(await value("C1")).toBe("1");
  await workbench.type("ZZ40000", "6");
  await workbench.type("C1", "=ZZ40000+1");
  expect(await value("C1")).toBe("7");
  // It has as many rows as its sheet, however many these are: one too many from row 2 on.
  await workbench.type("E2", "=A:A*2");
  expect(await value("E2")).toBe("#SPILL!");
});

test("The line below the grid follows from sheet to sheet.", async () => {
  await open("Dose ladder");
  const said = workbench.page.locator("#status .value");
  for (const sheet of ["Trial plan", "Mill run"]) {
    await workbench.show(sheet);
    await workbench.page.locator("#status .value", { hasText: sheet }).waitFor();
    expect(await said.textContent()).toBe(sheet);
  }
});

test("A table takes in what is typed below it; undone and done again it goes and comes.", async () => {
  await open("Dose ladder");
  const entered = async () => value("Results!K4");
  expect(await entered()).toBe("50");
  const row = { A55: "5", B55: "25", C55: "6", D55: "3", E55: "2.16", F55: "60" };
  for (const [address, text] of Object.entries(row)) await workbench.type(address, text);
  expect(await value("G55")).toBe("36");
  expect(await entered()).toBe("51");
  const keys = async (press: string) => {
    for (let step = 0; step < 7; step++) await workbench.page.keyboard.press(press);
  };
  await keys("Control+z");
  await expect.poll(entered).toBe("50");
  expect(await value("A55")).toBe("");
  await keys("Control+y");
  await expect.poll(entered).toBe("51");
  expect(await value("G55")).toBe("36");
});

test("A formula typed below a table stays as the table takes in its row, and so does the one above it.", async () => {
  const rows = [
    ["Dose", "Load"],
    [1, "=A2*2"],
    [2, "=A3*2"],
  ];
  await openTable({ rows });
  await workbench.type("A4", "=A3+5");
  expect(await value("A4")).toBe("7");
  expect(await value("B4")).toBe("14");
  await workbench.type("B5", "=B4*3");
  expect(await value("B5")).toBe("42");
  await workbench.type("A3", "3");
  expect(await value("B3")).toBe("6");
  expect(await value("A4")).toBe("8");
  expect(await value("B5")).toBe("48");
  // Filled down as well: the table takes in two rows.
  await workbench.select("A4");
  await workbench.page.keyboard.press("Shift+ArrowDown");
  await workbench.page.keyboard.press("Shift+ArrowDown");
  await workbench.page.keyboard.press("Shift+ArrowDown");
  await workbench.page.keyboard.press("Control+d");
  await expect.poll(() => value("A6")).toBe("18");
  expect(await value("A7")).toBe("23");
});

test("A total below a table is no row of it, nor is what stands beside it; a name is one.", async () => {
  const rows = [
    ["What", "Dose"],
    ["starch", 4],
    ["size", 2],
  ];
  await openTable({ rows });
  await workbench.type("D1", "=ROWS(Runs[Dose])");
  await workbench.type("B4", "=SUBTOTAL(109,Runs[Dose])");
  await workbench.type("A4", "All of it");
  expect(await value("B4")).toBe("6");
  expect(await value("D1")).toBe("2");
  const { book, notice } = await saved();
  expect(book.tables[0]?.area.rows).toBe(3);
  expect(book.sheets[0]?.cells[3]?.[1]?.formula).toBe("SUBTOTAL(109,Runs[Dose])");
  expect(notice).toBe("");
  for (const address of ["A4", "B4"]) {
    await workbench.page.keyboard.press("Control+z");
    await expect.poll(() => value(address)).toBe("");
  }
  await workbench.type("A4", "dye");
  expect(await value("D1")).toBe("3");
  await workbench.type("A5", "Total");
  await workbench.type("B5", "=SUM(B2:B4)");
  expect(await value("B5")).toBe("6");
  expect(await value("D1")).toBe("3");
});

test("A table takes in a word below its numbers, and a formula of the new row; a copied formula goes on naming it.", async () => {
  const rows = [
    ["Dose", "Load"],
    [1, "=Runs[[#This Row],[Dose]]*2"],
    [2, "=Runs[[#This Row],[Dose]]*2"],
  ];
  await openTable({ rows });
  const copy = async (from: string, to: string) => {
    await workbench.copy(from);
    await workbench.paste(to);
  };
  await workbench.type("D1", "=SUM(Runs[Dose])");
  await copy("D1", "E1");
  await copy("B2", "D8");
  await expect.poll(() => value("D8")).toBe("#VALUE!");
  await workbench.type("A4", "n/a");
  expect(await value("B4")).toBe("#VALUE!");
  await workbench.type("B5", "=[@Dose]/SUM(Runs[Dose])");
  expect(await value("B5")).toBe("0");
  await workbench.type("A5", "5");
  expect(await value("B5")).toBe("0.625");
  await workbench.type("B6", "=[@Dose]*3");
  await workbench.type("A6", "4");
  expect(await value("B6")).toBe("12");
  expect(await value("E1")).toBe("12");
  const { book } = await saved();
  expect(book.tables[0]?.area.rows).toBe(6);
  const formula = (row: number, column: number) => book.sheets[0]?.cells[row]?.[column]?.formula;
  expect(formula(4, 1)).toBe("Runs[[#This Row],[Dose]]/SUM(Runs[Dose])");
  expect(formula(5, 1)).toBe("Runs[[#This Row],[Dose]]*3");
  expect(formula(0, 4)).toBe("SUM(Runs[Dose])");
  expect(formula(7, 3)).toBe("Runs[[#This Row],[Dose]]*2");
});

test("A row put in above the totals of a table is a row of it.", async () => {
  const rows = [
    ["Dose", "Load"],
    [1, "=Runs[[#This Row],[Dose]]*2"],
    [2, "=Runs[[#This Row],[Dose]]*2"],
    ["Total", "=SUBTOTAL(109,Runs[Load])"],
  ];
  await openTable({ rows, totals: true });
  await workbench.insertRowAbove("S", 4);
  await workbench.type("A4", "10");
  expect(await value("B4")).toBe("20");
  expect(await value("B5")).toBe("26");
  const { book } = await saved();
  expect(book.tables).toMatchObject([{ area: { rows: 5 }, totalsRow: true }]);
  await workbench.page.keyboard.press("Control+z");
  await workbench.page.keyboard.press("Control+z");
  await expect.poll(() => value("B4")).toBe("6");
});

test("Rows put into a table compute as its others, also right below its heads; undone with one step.", async () => {
  const doses = [1, 2, 3, 4].map((dose, at) => [
    dose,
    `=A${at + 2}*2`,
    "=Runs[[#This Row],[Dose]]/SUM(Runs[Dose])",
    `=A${at + 2}+${at}`,
  ]);
  const rules =
    '<dataValidations count="1"><dataValidation type="decimal" operator="greaterThan" showErrorMessage="1" showInputMessage="1" prompt="In kg/t." sqref="A2:A5"><formula1>0</formula1></dataValidation></dataValidations>';
  const rows = [["Dose", "Load", "Part", "Mixed"], ...doses];
  await openTable({ rows, rules });
  await workbench.type("F1", "=SUM(Runs[Load])");
  const row = async (at: number) => {
    const values: string[] = [];
    for (const column of ["B", "C", "D"]) values.push(await value(`${column}${at}`));
    return values;
  };
  await workbench.insertRowAbove("S", 4);
  expect(await row(4)).toEqual(["0", "0", ""]);
  await workbench.type("A4", "10");
  expect(await row(4)).toEqual(["20", "0.5", ""]);
  expect(await value("F1")).toBe("40");
  await workbench.page.keyboard.press("Control+z");
  await expect.poll(() => value("B4")).toBe("0");
  await workbench.page.keyboard.press("Control+z");
  await expect.poll(() => row(4)).toEqual(["6", "0.3", "5"]);
  expect(await row(6)).toEqual(["", "", ""]);
  await workbench.page.keyboard.press("Control+y");
  await expect.poll(() => row(4)).toEqual(["0", "0", ""]);

  await workbench.insertRowAbove("S", 2, 2);
  await workbench.type("A2", "10");
  expect(await row(2)).toEqual(["20", "0.5", ""]);
  expect(await row(3)).toEqual(["0", "0", ""]);
  expect(await value("F1")).toBe("40");
  expect((await workbench.read("A2")).message).toBe("In kg/t.");
  const { book } = await saved();
  const [sheet] = book.sheets;
  const area = { row: 1, column: 0, rows: 7, columns: 1 };
  expect(sheet?.entryRules).toMatchObject([{ area }]);
  expect(book.tables[0]?.area.rows).toBe(8);
  for (const at of [2, 3, 4, 5, 6, 7, 8]) {
    expect(sheet?.cells[at - 1]?.[1]?.formula).toBe(`A${at}*2`);
    expect(sheet?.cells[at - 1]?.[2]?.formula).toBe("Runs[[#This Row],[Dose]]/SUM(Runs[Dose])");
  }
  expect(sheet?.cells[0]?.[5]?.formula).toBe("SUM(Runs[Load])");
  await workbench.page.keyboard.press("Control+z");
  await workbench.page.keyboard.press("Control+z");
  await expect.poll(() => row(2)).toEqual(["2", "0.1", "1"]);
  expect(await value("F1")).toBe("20");
  // One that is typed below it as well: a formula over the whole table is over the new row, too.
  await workbench.type("A7", "5");
  expect(await row(7)).toEqual(["10", "0.333333333333", ""]);
  expect((await saved()).book.sheets[0]?.cells[6]?.[2]?.formula).toBe(
    "Runs[[#This Row],[Dose]]/SUM(Runs[Dose])",
  );
});

test("What answers each row of a table stays beside it when a row is put in right below its heads.", async () => {
  const rows = [["Dose"], [1], [2]];
  await openTable({ rows });
  await workbench.type("C2", "=Runs[Dose]*10");
  await workbench.type("D2", "=C2#+1");
  await workbench.insertRowAbove("S", 2);
  await workbench.type("A2", "7");
  expect(await value("C2")).toBe("70");
  expect(await value("D2")).toBe("71");
  expect(await value("D4")).toBe("21");
  await workbench.page.keyboard.press("Control+z");
  await workbench.page.keyboard.press("Control+z");
  await expect.poll(() => value("D2")).toBe("11");
  expect(await value("D3")).toBe("21");
  expect(await value("D4")).toBe("");
});

test("A table and its words stay, whatever is filled, deleted, cut or pasted at its corners.", async () => {
  const rows = [
    ["Dose", "Load"],
    [1, "=Runs[[#This Row],[Dose]]*2+D1"],
    [2, "=Runs[[#This Row],[Dose]]*2+D2"],
    [4, "=Runs[[#This Row],[Dose]]*2+D3"],
  ];
  await openTable({ rows });
  const { keyboard } = workbench.page;
  const sum = async (address: string) => {
    await workbench.type(address, "=SUM(Runs[Dose])");
    return value(address);
  };
  await workbench.select("B2");
  await keyboard.press("Shift+ArrowDown");
  await keyboard.press("Shift+ArrowDown");
  await keyboard.press("Control+d");
  expect(await sum("F1")).toBe("7");
  await workbench.copy("B4", "Control+x");
  await workbench.paste("H9");
  await expect.poll(() => value("H9")).toBe("8");
  await workbench.select("A4");
  await keyboard.press("Delete");
  expect(await sum("F2")).toBe("3");
  await workbench.type("A5", "9");
  expect(await sum("F3")).toBe("12");
  const { book } = await saved();
  expect(book.tables.map(({ name, area }) => [name, area.rows])).toEqual([["Runs", 5]]);
  expect(book.sheets[0]?.cells[2]?.[1]?.formula).toBe("Runs[[#This Row],[Dose]]*2+D2");
});

test("A sheet that is taken away leaves an error that is explained wherever it was read.", async () => {
  await open("Dose and effluent");
  const { page } = workbench;
  await workbench.show("Thirty days");
  expect(Number(await value("B5"))).toBeGreaterThan(0);
  await page
    .locator("[data-u-comp=slide-tab-item]", { hasText: /^Log$/ })
    .click({ button: "right" });
  await page.evaluate(() => delete document.documentElement.dataset.computed);
  await page.getByText("Delete", { exact: true }).first().click();
  await page.getByRole("button", { name: "OK" }).click();
  await workbench.computed();
  await workbench.show("Thirty days");
  expect(await workbench.read("B5")).toMatchObject({
    value: "#REF!",
    message: expect.stringContaining("a sheet"),
  });
});
