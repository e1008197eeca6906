import { readFile } from "node:fs/promises";
import { unzipSync } from "fflate";
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { layOut } from "../../src/workbook/layout/lay-out";
import { plans } from "../../templates/plans";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const planned = layOut(doseAndEffluent);

const served = serveWorkbench();

const paneOf = (page: Page) => page.getByRole("complementary", { name: "Pane", exact: true });
const sheetNames = (page: Page) => page.locator("main").getByRole("tab").allTextContents();

async function openTab(page: Page, name: string): Promise<Locator> {
  const pane = paneOf(page);
  await pane.getByRole("tab", { name }).click();
  return pane;
}

describe("beside the grid", () => {
  let workbench: WorkbenchPage;
  let page: Page;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
    page = workbench.page;
  });

  test("the pane is open where there is room, and its button takes it away and brings it back", async () => {
    const grid = page.locator("#grid");
    await paneOf(page).getByRole("tab", { name: "Additives" }).waitFor();
    const beside = (await grid.boundingBox())?.width ?? 0;
    expect(beside).toBe(1400 - 360);
    const button = page.getByRole("button", { name: "Pane", exact: true });
    await button.click();
    expect(await paneOf(page).isVisible()).toBe(false);
    expect((await grid.boundingBox())?.width).toBe(1400);
    await button.click();
    expect(await paneOf(page).isVisible()).toBe(true);
    expect((await grid.boundingBox())?.width).toBe(beside);
  });

  test("a function is written into the empty cell that is selected, and the cell computes", async () => {
    await workbench.select("H60");
    const pane = await openTab(page, "Functions");
    await pane.getByRole("searchbox").fill("DOSE.TARGET");
    await pane
      .getByRole("button", { name: /DOSE\.TARGET/ })
      .first()
      .click();
    await pane.getByRole("button", { name: "Write into a cell…" }).click();
    await pane.getByRole("textbox", { name: "retained", exact: true }).fill("6.5");
    await pane.getByRole("textbox", { name: "overallRetention", exact: true }).first().fill("0.82");
    await pane.getByRole("button", { name: "Write the formula" }).click();
    await pane.getByText(/H60 now holds =WETEND\.DOSE\.TARGET\(6\.5, ?0\.82\)/).waitFor();
    await expect
      .poll(async () => Number((await workbench.read("H60")).value))
      .toBeCloseTo(6.5 / 0.82, 9);
  });

  test("where something stands it is shown, and stays until the person agrees", async () => {
    const pane = paneOf(page);
    await workbench.type("H61", "kept");
    await workbench.select("H61");
    await pane.getByRole("button", { name: "Write the formula" }).click();
    await pane.getByText("H61 is not blank: it holds kept.", { exact: false }).waitFor();
    expect((await workbench.read("H61")).value).toBe("kept");
    await pane.getByRole("button", { name: /^Replace .*H61$/ }).click();
    await expect
      .poll(async () => Number((await workbench.read("H61")).value))
      .toBeCloseTo(6.5 / 0.82, 9);
  });

  test("typing and deleting in the pane leave the sheet alone", async () => {
    await workbench.select("H60");
    const field = paneOf(page).getByRole("textbox", { name: "retained", exact: true });
    await field.click();
    await page.keyboard.press("End");
    await page.keyboard.type("1");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Delete");
    expect(await field.inputValue()).toBe("6.5");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Backspace");
    for (const address of ["H60", "H61"])
      expect(Number((await workbench.read(address)).value)).toBeCloseTo(6.5 / 0.82, 9);
  });

  test("a table of your own additives is started, found again, and not written over", async () => {
    await workbench.select("H70");
    const pane = await openTab(page, "Additives");
    await pane.getByText("Cationic starch, DS 0.035").click();
    await pane.getByRole("button", { name: "Start a table of your own" }).click();
    await pane.getByText("is now a table of your own", { exact: false }).waitFor();
    expect((await workbench.read("H71")).value).toBe("Cationic starch, DS 0.035");
    await workbench.select("H71");
    await pane.getByRole("button", { name: "Start a table of your own" }).click();
    await pane.getByText("H71 is not blank", { exact: false }).waitFor();
    await pane.getByRole("button", { name: "All additives" }).click();
    await pane.getByRole("button", { name: "DS 0.035 own, from ownAdditives" }).waitFor();
  });

  test("the working of a cell ends in the number that the cell shows", async () => {
    const { value } = await workbench.read(cellOf("dose"));
    const pane = await openTab(page, "Working");
    const steps = pane.getByRole("listitem").filter({ has: page.locator("math") });
    await steps.first().waitFor();
    const last = (await steps.last().textContent()) ?? "";
    expect(last).toContain(Number(value).toPrecision(6));
  });

  test("it follows an input that is edited", async () => {
    const before = Number((await workbench.read(cellOf("dose"))).value);
    await workbench.type(cellOf("wanted"), "7.5");
    const { value } = await workbench.read(cellOf("dose"));
    expect(Number(value)).toBeGreaterThan(before);
    const steps = paneOf(page)
      .getByRole("listitem")
      .filter({ has: page.locator("math") });
    await expect.poll(() => steps.last().textContent()).toContain(Number(value).toPrecision(6));
  });

  test("a cell that fails shows its message, and the list of failures leads to it", async () => {
    await workbench.type("H62", "=WETEND.DOSE.TARGET(6.5,82)");
    const { message } = await workbench.read("H62");
    const pane = paneOf(page);
    const [wrong = ""] = message.split(". ");
    expect(wrong).toContain("82");
    await pane.getByText(wrong, { exact: false }).first().waitFor();
    await workbench.select("A1");
    await pane.getByRole("button", { name: "Check this workbook" }).click();
    const failures = pane.getByRole("list", { name: "Cells that fail" });
    await failures.getByText(wrong, { exact: false }).waitFor();
    await failures.getByRole("button", { name: /H62/ }).click();
    await page.locator("#status .address", { hasText: /^H62$/ }).waitFor();
  });

  test("an error that came through other cells is told as the line below the grid tells it", async () => {
    await workbench.type("H64", "=WETEND.DOSE.TARGET(-1,0.5)");
    await workbench.type("H65", "=2*H64");
    await workbench.type("H66", "=WETEND.DOSE.TARGET(H65,0.5)");
    const { message } = await workbench.read("H66");
    expect(message).toMatch(/^From H64: retained is -1\. /);
    const pane = paneOf(page);
    const told = pane.getByRole("region", { name: "What is wrong" });
    await expect.poll(async () => (await told.allInnerTexts()).join(" ")).toContain("From H64");
    const [wrong = "", mend] = (await told.getByRole("paragraph").allInnerTexts()).slice(1);
    expect(`${wrong} ${mend}`).toBe(message);
    await pane.getByRole("button", { name: "Check this workbook" }).click();
    const failures = pane.getByRole("list", { name: "Cells that fail" });
    await failures.getByText(message).waitFor();
  });

  test("the workbook is computed again on request", async () => {
    await paneOf(page).getByRole("button", { name: "Compute it again" }).click();
    await paneOf(page).getByText("The workbook was computed again.").waitFor();
  });

  test("a copy with values only is saved", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      paneOf(page).getByRole("button", { name: "Copy with values only" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("dose-and-effluent.values.xlsx");
    await paneOf(page)
      .getByText("was saved. This workbook is as it was.", { exact: false })
      .waitFor();
  });

  test("a template comes as new sheets with free names, leaves every cell alone, and one undo takes it away", async () => {
    const before = await sheetNames(page);
    const dose = await workbench.read(cellOf("dose"));
    const pane = await openTab(page, "Templates");
    expect(await pane.getByRole("article").count()).toBe(plans.length);
    await page.evaluate(() => delete document.documentElement.dataset.computed);
    await pane
      .getByRole("button", { name: `Add to the workbook: ${doseAndEffluent.title}` })
      .click();
    await pane.getByText("Nothing else was changed.", { exact: false }).waitFor();
    await workbench.computed();
    const after = await sheetNames(page);
    expect(after).toEqual([...before, ...before.map((name) => `${name} 2`)]);
    expect(await workbench.read(cellOf("dose"))).toEqual(dose);
    const [sheet, cell] = cellOf("dose").split("!");
    // The copy computes from its own inputs: those of the plan, not the ones that were edited.
    await expect
      .poll(async () => Number((await workbench.read(`${sheet} 2!${cell}`)).value))
      .toBeCloseTo(7.8, 1);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    const saved = unzipSync(await readFile(await download.path()));
    const charts = Object.keys(saved).filter((path) => /^xl\/charts\/chart\d+\.xml$/.test(path));
    expect(charts).toHaveLength(2 * planned.sheets.flatMap((one) => one.charts).length);
    expect(await page.getByRole("alert").isVisible()).toBe(false);
    await page
      .locator("canvas[id^=univer-sheet-main-canvas]")
      .first()
      .click({ position: { x: 400, y: 300 } });
    await page.keyboard.press("Control+z");
    await expect.poll(() => sheetNames(page)).toEqual(before);
    expect(await workbench.read(cellOf("dose"))).toEqual(dose);
  });

  test("nothing is asked of any other machine, and no error is logged", () => {
    const elsewhere = workbench.requests.filter(
      (url) => !url.startsWith(`${served.address}/`) && !/^(data|blob):/.test(url),
    );
    expect(elsewhere).toEqual([]);
    expect(workbench.errors).toEqual([]);
  });
});

test("the additives are those of the workbook that is open, and of its tables as they now are", async () => {
  const workbench = await served.withTemplate("Dose and effluent");
  const { page } = workbench;
  await workbench.select("H70");
  const pane = await openTab(page, "Additives");
  await pane.getByText("Cationic starch, DS 0.035").click();
  await pane.getByRole("button", { name: "Start a table of your own" }).click();
  await pane.getByRole("button", { name: "All additives" }).click();
  const own = pane.getByRole("button", { name: /own, from/ }).first();
  await own.waitFor();
  await pane.getByRole("checkbox", { name: "Compare Cationic starch, DS 0.035" }).check();
  await workbench.type("H71", "Starch of the morning shift");
  await pane.getByRole("button", { name: "Starch of the morning shift own" }).waitFor();
  await workbench.openTemplate("Blank workbook");
  await own.waitFor({ state: "detached" });
  await pane.getByRole("button", { name: "Cationic starch, DS 0.035" }).waitFor();
});

describe.each([
  ["wide and light", { viewport: { width: 1400, height: 900 }, colorScheme: "light" }],
  ["wide and dark", { viewport: { width: 1400, height: 900 }, colorScheme: "dark" }],
  ["narrow and light", { viewport: { width: 320, height: 700 }, colorScheme: "light" }],
  ["narrow and dark", { viewport: { width: 320, height: 700 }, colorScheme: "dark" }],
] as const)("%s", (_, options) => {
  test("the page with its pane has no serious fault of accessibility and does not scroll sideways", async () => {
    const workbench = await served.withTemplate("Dose and effluent");
    await workbench.look(options);
    const { page, errors } = workbench;
    const button = page.getByRole("button", { name: "Pane", exact: true });
    if ((await button.getAttribute("aria-expanded")) === "false") await button.click();
    await paneOf(page).getByRole("tab", { name: "Additives" }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
    ).toBeLessThanOrEqual(0);
    expect(errors).toEqual([]);
  });
});

/** The cell that a name of the first workbook stands for: "'Thirty days'!$B$4" → Thirty days!B4. */
function cellOf(name: string): string {
  const formula = planned.definedNames.find((one) => one.name === name)?.formula;
  if (!formula) throw new Error(`The workbook has no name ${name}.`);
  return formula.replaceAll(/[$']/g, "");
}
