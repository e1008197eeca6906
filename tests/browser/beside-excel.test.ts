import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Configuration } from "webpack";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { layOut } from "../../src/workbook/layout/lay-out";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { plans } from "../../templates/plans";
import configurations from "../../webpack.config";
import { openBesideExcel, type Platform, serveBesideExcel, WORKBOOK } from "./beside-excel/serve";
import { buildInMemory } from "./build-in-memory";
import type { Served } from "./serve-files";
import { openBrowser, shared } from "./shared/shared";
import { filesIn, ORIGIN } from "./whole-build";

/**
 * The add-in as a build writes it, under its headers, on Excel's own library; behind the library stands a
 * workbook in memory. The whole way from a click in the pane to the cells of the workbook and back.
 */
const { metadata } = inject("functions");
let browser: Browser;
let served: Served;
let page: Page;

beforeAll(async () => {
  served = await serveBesideExcel();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

async function start(platform: Platform = "Win32") {
  const beside = await openBesideExcel(browser, served, platform);
  page = beside.page;
  return async () => {
    expect(beside.faults).toEqual([]);
    expect(beside.asked.filter((url) => !url.startsWith(served.origin))).toEqual([]);
    await page.close();
  };
}

beforeEach(() => start());

const open = (name: string) => page.getByRole("tab", { name }).click();
const cell = (address: string) => page.evaluate((at) => window.fake.cell(at), address);

const ours = (cells: readonly { formula?: string | undefined }[]) =>
  cells.filter(({ formula }) => formula?.includes("WETEND.")).length;

test.each<Platform>(["Web", "Win32", "Mac"])(
  "on %s every template comes as new sheets with its formulas, names, tables and charts",
  async (platform) => {
    const beside = await openBesideExcel(browser, served, platform);
    await beside.page.getByRole("tab", { name: "Templates" }).click();
    for (const { title, sheets } of plans) {
      await beside.page.getByRole("button", { name: `Add to the workbook: ${title}` }).click();
      await beside.page.getByText(`${title}: ${sheets.length} new sheets`).waitFor();
    }
    const workbook = await beside.page.evaluate(() => ({
      sheets: [...window.fake.sheets.keys()],
      cells: [...window.fake.sheets.values()].flatMap((cells) => [...cells.values()]),
      tables: window.fake.tables.length,
      names: window.fake.names.size,
      charts: window.fake.done.filter((one) => /charts\.add\([^)]*\)$/.test(one)).length,
    }));
    const books = plans.map((plan) => layOut(plan));
    const count = (per: (book: PlannedBook) => number) =>
      books.reduce((sum, book) => sum + per(book), 0);
    expect(workbook.sheets).toHaveLength(1 + count(({ sheets }) => sheets.length));
    expect(workbook.tables).toBe(count(({ tables }) => tables.length));
    expect(workbook.names).toBe(count(({ definedNames }) => definedNames.length));
    expect(workbook.charts).toBe(
      count(({ sheets }) => sheets.reduce((sum, { charts }) => sum + charts.length, 0)),
    );
    expect(ours(workbook.cells)).toBe(
      count(({ sheets }) =>
        ours(
          sheets.flatMap(({ cells }) =>
            Object.values(cells).flatMap((line) => Object.values(line)),
          ),
        ),
      ),
    );
    expect(beside.faults).toEqual([]);
    await beside.page.close();
  },
);

test("a second copy of a template takes names that are free and leaves the first alone", async () => {
  await open("Templates");
  const add = page.getByRole("button", { name: "Add to the workbook: Dose and effluent" });
  const sheets = () =>
    page.evaluate(() =>
      [...window.fake.sheets].map(([name, cells]) => [name, cells.size] as const),
    );
  await add.click();
  await page.getByText("Nothing else was changed.").waitFor();
  const first = await sheets();
  await add.click();
  await expect.poll(async () => (await sheets()).length).toBe(2 * first.length - 1);
  const [, ...both] = await sheets();
  expect(both.slice(0, first.length - 1)).toEqual(first.slice(1));
  expect(both.slice(first.length - 1).every(([name]) => name.endsWith(" 2"))).toBe(true);
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

test("the functions load with the workbook once the person asks for it, and no longer once they do not", async () => {
  await open("Working");
  const control = page.getByRole("switch", {
    name: "Load the functions whenever this workbook opens",
  });
  expect(await control.isChecked()).toBe(false);
  await control.click();
  await expect.poll(() => control.isChecked()).toBe(true);
  expect(await page.evaluate(() => Office.addin.getStartupBehavior())).toMatch(/^load$/i);
  await control.click();
  await expect.poll(() => control.isChecked()).toBe(false);
  expect(await page.evaluate(() => Office.addin.getStartupBehavior())).toMatch(/^none$/i);
});

describe("a build with a namespace of its own", () => {
  const namespace = "WETENDDEV";
  const script = "./src/host/place.ts";
  let own: Served;
  let files: Readonly<Record<string, Buffer>>;
  beforeAll(async () => {
    const [functions, addin] = configurations({ namespace, origin: ORIGIN });
    // Any script stands for the pane's, which the usual build has: what differs is around it.
    const around = await buildInMemory({ ...addin, entry: { taskpane: script, pane: script } });
    files = { ...around, ...(await buildInMemory(functions as Configuration)) };
    const attribute = /data-namespace="[^"]*"/;
    const [said = ""] = attribute.exec(String(around["taskpane.html"])) ?? [];
    const usual = String(filesIn(await shared("built"))["taskpane.html"]);
    own = await serveBesideExcel({
      "taskpane.html": Buffer.from(usual.replace(attribute, said)),
      "reference.json": files["reference.json"] as Buffer,
      "functions.json": files["functions.json"] as Buffer,
    });
  });
  afterAll(() => own?.close());

  test("names it in the manifest, in what is said of each function, and in no place the usual one", () => {
    expect(String(files["manifest.xml"])).toContain(`DefaultValue="${namespace}"`);
    expect(String(files["manifest.xml"])).toContain(`Type =${namespace}. into a cell`);
    expect(String(files["help/dose.pump.html"])).toContain(`<h1>${namespace}.DOSE.PUMP</h1>`);
    expect(String(files["help/dose.pump.html"])).toContain(`=${namespace}.DOSE.PUMP(`);
    for (const [name, text] of Object.entries(files))
      if (/^(help\/|manifest|functions\.json|reference|taskpane)/.test(name))
        expect(String(text), name).not.toContain("WETEND.");
  });

  test("writes, checks and repairs formulas under it in the workbook", async () => {
    const beside = await openBesideExcel(browser, own, "Win32");
    await beside.page.getByRole("tab", { name: "Functions" }).click();
    await beside.page.getByRole("button", { name: /^DOSE\.TARGET/ }).click();
    await beside.page.getByText(`${namespace}.DOSE.TARGET(`).first().waitFor();
    await beside.page.getByRole("button", { name: "Write into a cell…" }).click();
    await beside.page.getByRole("textbox", { name: "retained" }).fill("6.5");
    await beside.page.getByRole("textbox", { name: "overallRetention" }).fill("0.82");
    await beside.page.getByRole("button", { name: "Write the formula" }).click();
    const formula = (address: string) =>
      beside.page.evaluate((at) => window.fake.cell(at)?.formula, address);
    await expect.poll(() => formula("Sheet1!A1")).toBe(`=${namespace}.DOSE.TARGET(6.5,0.82)`);
    await beside.page.evaluate(() => {
      for (const [address, name] of [
        ["Sheet1!B1", "WETENDDEV"],
        ["Sheet1!B2", "WETEND"],
      ] as const)
        window.fake.put(address, {
          formula: `=_xldudf_${name}_DOSE_TARGET(6,0.5)`,
          value: "#NAME?",
        });
    });
    await beside.page.getByRole("tab", { name: "Working" }).click();
    await beside.page.getByRole("button", { name: "Check this workbook" }).click();
    await beside.page.getByRole("button", { name: "Repair 1 lost link" }).click();
    await beside.page.getByText("1 cell repaired.").waitFor();
    expect(await formula("Sheet1!B1")).toBe(`=${namespace}.DOSE.TARGET(6,0.5)`);
    // The formula of the other copy is the other copy's.
    expect(await formula("Sheet1!B2")).toBe("=_xldudf_WETEND_DOSE_TARGET(6,0.5)");
    expect(beside.faults).toEqual([]);
    await beside.page.close();
  });
});

test("the copy with values holds no formula of ours and every value that the workbook showed", async () => {
  await open("Working");
  await page.getByRole("button", { name: "Copy with values only" }).click();
  await page.getByText("This workbook is as it was.").waitFor({ timeout: 30_000 });
  const opened = await page.evaluate(() => window.fake.opened);
  expect(opened).toHaveLength(1);
  const names = functionNames(metadata.functions.map(({ id }) => id));
  const { book: copy } = await readWorkbook(Buffer.from(opened[0] as string, "base64"), names);
  const { book: original } = await readWorkbook(readFileSync(WORKBOOK), names);
  const formulas = (book: typeof copy) =>
    ours(
      book.sheets.flatMap(({ cells }) =>
        Object.values(cells).flatMap((line) => Object.values(line)),
      ),
    );
  expect(formulas(original)).toBeGreaterThan(0);
  expect(formulas(copy)).toBe(0);
  expect(copy.sheets.map(({ name }) => name)).toEqual([
    ...original.sheets.map(({ name }) => name),
    "Values only",
  ]);
});
