/** Number formats in the workbench: changed by keys, by their code, and saved. */
import { expect, inject, test } from "vitest";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));

const partsOf = ({ page }: WorkbenchPage) => ({
  button: page.locator("#format summary"),
  shown: page.locator("#format-shown"),
  code: page.getByLabel("Code"),
  problem: page.locator("#format-problem"),
  way: (label: string) => page.locator("#format").getByRole("button", { name: label }),
});

/** What the panel says of a cell, and its code. */
async function formatAt(workbench: WorkbenchPage, address: string): Promise<[string, string]> {
  const { button, shown, code } = partsOf(workbench);
  await workbench.select(address);
  await button.click();
  await expect.poll(() => shown.textContent()).toContain(`${address} shows`);
  const told = [(await shown.textContent()) ?? "", await code.inputValue()] as [string, string];
  await button.click();
  return told;
}

/** Whole columns, or any other cells that the name box knows. */
async function selectCells({ page }: WorkbenchPage, cells: string): Promise<void> {
  const box = page.getByLabel("Cell or name to go to");
  await box.fill(cells);
  await box.press("Enter");
}

test("by keys alone a spilled number gets fewer decimals, and then a code; each is one step to undo", async () => {
  const workbench = await served.withTemplate("Blank workbook");
  const { page } = workbench;
  const { button, shown, code, problem } = partsOf(workbench);
  await workbench.type("A1", "=SEQUENCE(3, 1, 1234.5678, 0.25)");
  await workbench.select("A2");
  await button.focus();
  await page.keyboard.press("Enter");
  await expect.poll(() => shown.textContent()).toBe("A2 shows 1234.8178");
  for (const key of ["Tab", "Enter", "Enter"]) await page.keyboard.press(key);
  await expect.poll(() => shown.textContent()).toBe("A2 shows 1234.82");
  expect(await code.inputValue()).toBe("0.00");

  await code.fill("0.0 kg/t");
  await page.keyboard.press("Enter");
  expect(await problem.textContent()).toBe('Words stand in quotation marks: 0.0 "kg/t".');
  expect(await seriousFindings(page)).toEqual([]);
  await code.fill('#,##0.0 "kg/t"');
  await page.keyboard.press("Enter");
  // The panel closes, and the keys are the grid's again.
  await page.keyboard.press("ArrowUp");
  expect(await formatAt(workbench, "A2")).toEqual(["A2 shows 1,234.8 kg/t", '#,##0.0 "kg/t"']);
  expect(await formatAt(workbench, "A1")).toEqual(["A1 shows 1234.5678", "General"]);

  const codes: string[] = [];
  for (let step = 0; step < 3; step++) {
    await page.keyboard.press("Control+z");
    codes.push((await formatAt(workbench, "A2"))[1]);
  }
  expect(codes).toEqual(["0.00", "0.000", "General"]);
});

test("a whole column and single cells keep their formats in the saved file, and are asked for before", async () => {
  const rows = Array.from({ length: 450 }, (_, at) => {
    const row = at + 1;
    return `<row r="${row}"><c r="A${row}"><v>${row / 1000}</v></c><c r="B${row}" t="str"><v>00${row}</v></c></row>`;
  });
  const file = rawWorkbook({ sheets: { S: `<sheetData>${rows.join("")}</sheetData>` } });
  const workbench = await served.withFile("own.xlsx", file);
  const { button, way } = partsOf(workbench);
  const format = async (cells: string, label: string) => {
    await selectCells(workbench, cells);
    await button.click();
    await way(label).click();
    await button.click();
  };

  await format("A:A", "Percent");
  await workbench.openFile("own.xlsx", file);
  expect(workbench.asked).toEqual([expect.stringContaining("is not saved")]);
  await format("A:A", "Percent");
  await format("B1:B2", "Thousands");
  // A share is typed as a percentage, also where nothing stood yet; a text of digits stays one.
  await workbench.type("A500", "82");
  await workbench.type("A1", "12.5");
  expect(await formatAt(workbench, "A500")).toEqual(["A500 shows 82.0 %", "0.0 %"]);
  expect(await formatAt(workbench, "B1")).toEqual(["B1 shows 001", "#,##0"]);

  const { bytes, notice } = await workbench.save();
  expect(notice).toBe("");
  const { sheets, styles } = (await readWorkbook(bytes, names)).book;
  const [sheet] = sheets;
  const at = (row: number, column: number) => {
    const { value, style = "" } = sheet?.cells[row]?.[column] ?? {};
    return [value, styles[style]?.format];
  };
  expect([at(0, 0), at(449, 0), at(499, 0)]).toEqual([
    [0.125, "0.0 %"],
    [0.45, "0.0 %"],
    [0.82, "0.0 %"],
  ]);
  expect([at(0, 1), at(2, 1)]).toEqual([
    ["001", "#,##0"],
    ["003", undefined],
  ]);
  expect(styles[sheet?.columnStyles?.[0] ?? ""]?.format).toBe("0.0 %");
  await workbench.openFile("again.xlsx", bytes);
  expect(await formatAt(workbench, "A450")).toEqual(["A450 shows 45.0 %", "0.0 %"]);
  expect(workbench.errors).toEqual([]);
});
