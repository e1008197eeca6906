import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Configuration } from "webpack";
import { headersFor } from "../../src/build/headers";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import configurations from "../../webpack.config";
import { openBrowser } from "./browser";
import { buildInMemory } from "./build-in-memory";
import { type Served, serveFiles } from "./serve-files";
import { filesIn } from "./whole-build";

/**
 * The add-in's own page as a build writes it, under its headers, beside a stand-in for Excel: the whole way
 * from a click in the pane to the cells of the workbook.
 */
let browser: Browser;
let served: Served;
let page: Page;
let faults: string[];
let asked: string[];

const template = path.join(import.meta.dirname, "../../templates/dose-and-effluent.xlsx");
const { metadata } = inject("functions");

beforeAll(async () => {
  const addin = configurations().find(({ name }) => name === "addin") as Configuration;
  const standIn = await buildInMemory({
    mode: "development",
    entry: path.join(import.meta.dirname, "beside-excel/fake-office.ts"),
    output: { path: "/stand-in", filename: "office.js" },
    ...(addin.module === undefined ? {} : { module: addin.module }),
    ...(addin.resolve === undefined ? {} : { resolve: addin.resolve }),
    devtool: false,
  });
  served = await serveFiles(
    { ...filesIn(inject("built")), "office/office.js": standIn["office.js"] as Buffer },
    headersFor,
  );
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

beforeEach(async () => {
  page = await browser.newPage({ viewport: { width: 340, height: 900 } });
  faults = [];
  asked = [];
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  page.on("request", (request) => asked.push(request.url()));
  await page.addInitScript((file) => {
    window.workbookFile = file;
  }, readFileSync(template).toString("base64"));
  await page.goto(`${served.origin}/taskpane.html`);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  return async () => {
    expect(faults).toEqual([]);
    expect(asked.filter((url) => !url.startsWith(served.origin))).toEqual([]);
    await page.close();
  };
});

const open = (name: string) => page.getByRole("tab", { name }).click();
const cell = (address: string) => page.evaluate((at) => window.fake.cell(at), address);

test("a template comes as new sheets with formulas, names, tables and charts, twice if wished", async () => {
  await open("Templates");
  const sheets = () => page.evaluate(() => window.fake.sheets.size);
  const before = await sheets();
  for (const times of [1, 2]) {
    await page.getByRole("button", { name: "Add to the workbook: Dose and effluent" }).click();
    await page.getByText("Nothing else was changed.").waitFor();
    await expect.poll(async () => ((await sheets()) - before) / times).toBeGreaterThan(1);
  }
  const workbook = await page.evaluate(() => {
    const { sheets, tables, names, done, runs } = window.fake;
    const formulas = [...sheets.values()]
      .flatMap((cells) => [...cells.values()])
      .filter((one) => one.formula?.includes("WETEND."));
    return {
      sheets: [...sheets.keys()],
      tables: tables.length,
      names: names.size,
      formulas: formulas.length,
      charts: done.filter((one) => /charts\.add\([^)]*\)$/.test(one)).length,
      runs,
    };
  });
  expect(workbook.sheets[0]).toBe("Sheet1");
  expect(workbook.sheets.length).toBeGreaterThan(4);
  expect(workbook.sheets.filter((name) => name.endsWith(" 2")).length).toBe(
    (workbook.sheets.length - 1) / 2,
  );
  expect(workbook.tables).toBeGreaterThanOrEqual(2);
  expect(workbook.names).toBeGreaterThan(10);
  expect(workbook.formulas).toBeGreaterThan(10);
  expect(workbook.charts).toBeGreaterThanOrEqual(2);
});

describe("the selected cell", () => {
  test("is explained from the call that Excel made, also when it was made before the pane was open", async () => {
    await page.evaluate(() =>
      window.enter("Sheet1!B2", "=WETEND.DOSE.TARGET(A1,A2)", "DOSE.TARGET", [[[6]], [[0.75]]]),
    );
    await open("Working");
    await page.getByText("8 kg/t").first().waitFor();
  });

  test("is explained when it fails, listed, and repaired where only the link was lost", async () => {
    await page.evaluate(async () => {
      await window.enter("Sheet1!B2", "=WETEND.DOSE.TARGET(A1,A2)", "DOSE.TARGET", [[[6]], [[82]]]);
      window.fake.put("Sheet1!B3", {
        formula: "=_xldudf_WETEND_DOSE_TARGET(A1,A2)",
        value: "#NAME?",
      });
    });
    await open("Working");
    await page.getByText("overallRetention is 82.").first().waitFor();
    await page.getByRole("button", { name: "Check this workbook" }).click();
    await page.getByRole("button", { name: "Repair 1 lost link" }).click();
    await page.getByText("1 cell repaired.").waitFor();
    expect((await cell("Sheet1!B3"))?.formula).toBe("=WETEND.DOSE.TARGET(A1,A2)");
  });

  test("gets one whole formula from the form, and is replaced only when the person agrees", async () => {
    await page.evaluate(() => {
      window.fake.put("Sheet1!A1", { value: "mine" });
    });
    await open("Functions");
    await page.getByRole("button", { name: /^DOSE\.TARGET/ }).click();
    await page.getByRole("button", { name: "Write into a cell…" }).click();
    await page.getByRole("textbox", { name: "retained" }).fill("6.5");
    await page.getByRole("textbox", { name: "overallRetention" }).fill("0.82");
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByText("Sheet1!A1 is not blank: it holds mine.").waitFor();
    expect(await cell("Sheet1!A1")).toEqual({ value: "mine" });
    await page.getByRole("button", { name: "Replace Sheet1!A1" }).click();
    await page.getByText("It held mine before.").waitFor();
    expect((await cell("Sheet1!A1"))?.formula).toBe("=WETEND.DOSE.TARGET(6.5,0.82)");
  });
});

test("the functions load with the workbook once the person asks for it", async () => {
  await open("Working");
  const control = page.getByRole("switch", {
    name: "Load the functions whenever this workbook opens",
  });
  expect(await control.isChecked()).toBe(false);
  await control.click();
  await expect.poll(() => control.isChecked()).toBe(true);
  expect(await page.evaluate(() => Office.addin.getStartupBehavior())).toBe("load");
});

test("the copy with values holds no formula of ours and every value that the workbook showed", async () => {
  await open("Working");
  await page.getByRole("button", { name: "Copy with values only" }).click();
  await page.getByText("This workbook is as it was.").waitFor({ timeout: 30_000 });
  const opened = await page.evaluate(() => window.fake.opened);
  expect(opened).toHaveLength(1);
  const names = functionNames(metadata.functions.map(({ id }) => id));
  const { book: copy } = await readWorkbook(Buffer.from(opened[0] as string, "base64"), names);
  const { book: original } = await readWorkbook(readFileSync(template), names);
  const formulas = (book: typeof copy) =>
    book.sheets
      .flatMap(({ cells }) => Object.values(cells).flatMap((line) => Object.values(line)))
      .filter(({ formula }) => formula?.includes("WETEND.")).length;
  expect(formulas(original)).toBeGreaterThan(0);
  expect(formulas(copy)).toBe(0);
  expect(copy.sheets.map(({ name }) => name)).toEqual([
    ...original.sheets.map(({ name }) => name),
    "Values only",
  ]);
});
