/** Words are found in all sheets, by the button or by keys, and the grid goes to the cells that hold them. */
import { expect, test } from "vitest";
import { rawWorkbook } from "../workbook/raw-workbook";
import { serveWorkbench } from "./served-workbench";

const served = serveWorkbench();

const text = (at: string, words: string) =>
  `<c r="${at}" t="inlineStr"><is><t>${words}</t></is></c>`;
const log = [
  `<row r="2">${text("A2", "Web break")}<c r="B2"><v>0.123456789</v></c></row>`,
  `<row r="3" hidden="1">${text("A3", "break")}</row>`,
  `<row r="400">${text("A400", "break, 2 h")}</row>`,
];
const totals = '<row r="1"><c r="A1"><f>SUM(Log!B2:B3)</f></c></row>';
const file = rawWorkbook({
  sheets: {
    Log: `<sheetData>${log.join("")}</sheetData>`,
    Totals: `<sheetData>${totals}<row r="5">${text("C5", "Breaks")}</row></sheetData>`,
  },
});

test("Ctrl+F counts, goes on with Enter and back with Shift and Enter, also to other sheets, and Escape leaves the keys to the found cell.", async () => {
  const workbench = await served.withFile("log.xlsx", file);
  const { page } = workbench;
  const panel = page.getByRole("form", { name: "Find" });
  const field = panel.getByRole("searchbox");
  const told = panel.getByRole("status");
  const shown = () => page.locator("#status .address").textContent();
  // What is being typed is taken before.
  await workbench.select("D1");
  await page.keyboard.type("7");
  await page.keyboard.press("Control+f");
  await expect.poll(() => field.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.press("Escape");
  // Words may follow the keys at once.
  await page.keyboard.press("Control+f");
  await page.keyboard.type("BREAK");
  await expect.poll(() => told.textContent()).toBe("3 cells. 1 more in hidden rows or columns.");
  const places = ["Log, A2: 1", "Log, A400: 2", "Totals, C5: 3", "Log, A2: 1"];
  for (const place of places) {
    await page.keyboard.press("Enter");
    await expect.poll(() => told.textContent()).toContain(`${place} of 3 cells`);
    await expect.poll(shown).toBe(/[A-Z]\d+/.exec(place)?.[0]);
  }
  await page.keyboard.press("Shift+Enter");
  await expect.poll(() => told.textContent()).toContain("Totals, C5: 3 of 3 cells");
  await page.keyboard.press("Escape");
  await panel.waitFor({ state: "detached" });
  await page.keyboard.press("ArrowUp");
  await expect.poll(shown).toBe("C4");
  expect((await workbench.read("Log!D1")).value).toBe("7");

  await page.locator("#find summary").click();
  expect(await field.inputValue()).toBe("BREAK");
  await field.fill("log!b2");
  await expect.poll(() => told.textContent()).toBe("No cell that shows holds this.");
  await panel.getByRole("checkbox", { name: "In formulas, too" }).check();
  await panel.getByRole("button", { name: "Next" }).click();
  await expect.poll(() => told.textContent()).toBe("Totals, A1: 1 of 1 cell.");
  await field.fill("0.12345678");
  await panel.getByRole("button", { name: "Previous" }).click();
  await expect.poll(() => told.textContent()).toBe("Log, B2: 1 of 2 cells.");
  expect(workbench.errors).toEqual([]);
});
