import { readFile } from "node:fs/promises";
import { strFromU8, unzipSync } from "fflate";
import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { addressOf } from "../../src/workbook/address";
import { layOut } from "../../src/workbook/layout/lay-out";
import type { PlannedChart } from "../../src/workbook/layout/planned";
import { plans } from "../../templates/plans";
import { chemicalBudget } from "../../templates/plans/chemical-budget";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();

const chartsOf = (plan: (typeof plans)[number]) =>
  layOut(plan).sheets.flatMap(({ name, charts }) =>
    charts.map((chart) => ({ sheet: name, chart })),
  );

const planned = (sheet: string, plan = doseAndEffluent): PlannedChart => {
  const found = chartsOf(plan).find((one) => one.sheet === sheet);
  if (!found) throw new Error(`No chart is planned on ${sheet}.`);
  return found.chart;
};

const picture = ({ page }: WorkbenchPage, { alt }: PlannedChart): Locator =>
  page.getByRole("img", { name: alt, exact: true });

async function openTemplate({ page }: WorkbenchPage, question: string): Promise<void> {
  await page.evaluate(() => delete document.documentElement.dataset.computed);
  await page.locator("#templates summary").click();
  await page.getByRole("button", { name: question }).click();
  await page.waitForSelector("html[data-computed]");
}

const boxOf = async (locator: Locator) => {
  const box = await locator.boundingBox();
  if (!box) throw new Error("The picture is not shown.");
  return box;
};

/** Of the first series. */
const columnHeights = (chart: Locator) =>
  chart
    .locator('[fill="url(#chart-fill-0)"] rect')
    .evaluateAll((all) => all.map((rect) => Number(rect.getAttribute("height"))));

describe("the pictures of charts", () => {
  let workbench: WorkbenchPage;
  const permit = planned("Permit");

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
  });

  test("are there on every sheet for which a plan has them, with their words, and on no other", async () => {
    for (const plan of plans) {
      await openTemplate(workbench, plan.question);
      for (const { name, charts } of layOut(plan).sheets) {
        await workbench.show(name);
        for (const chart of charts) await picture(workbench, chart).waitFor({ state: "attached" });
        await workbench.page.waitForFunction(
          (count) => document.querySelectorAll(".chart[role=img]").length === count,
          charts.length,
        );
      }
    }
    await openTemplate(workbench, doseAndEffluent.question);
  });

  test("show what the cells say, and change with them", async () => {
    await workbench.show("Permit");
    const chart = picture(workbench, permit);
    await chart.getByText("Part of the limit (%)").waitFor();
    const columns = () => columnHeights(chart);
    const before = await columns();
    const table = layOut(doseAndEffluent).tables.find(({ sheet }) => sheet === "Permit");
    const { row = 0, column = 0 } = table?.area ?? {};
    // What else leaves, of the first substance.
    await workbench.type(`Permit!${addressOf(row + 1, column + 2)}`, "100");
    await expect.poll(async () => (await columns())[0]).toBeLessThan((before[0] as number) / 10);
    expect((await columns())[1]).toBeCloseTo(before[1] as number, 0);
  });

  test("scroll with the sheet, and take neither wheel nor click from it", async () => {
    await workbench.show("Permit");
    const chart = picture(workbench, permit);
    const before = await boxOf(chart);
    await workbench.page.mouse.move(before.x + 200, before.y + 100);
    await workbench.page.mouse.wheel(0, 120);
    await expect.poll(async () => (await boxOf(chart)).y).toBeLessThan(before.y - 50);
    const now = await boxOf(chart);
    await workbench.page.mouse.click(now.x + 20, now.y + 150);
    await workbench.page.locator("#status .address", { hasText: /^A2\d$/ }).waitFor();
    await workbench.page.keyboard.type("typed below");
    await workbench.page.keyboard.press("Enter");
    const typed = (await workbench.page.locator("#status .address").textContent()) ?? "";
    expect(typed).toMatch(/^A2\d$/);
    await workbench.page.mouse.wheel(0, -500);
  });

  test("stay with their cells when rows are inserted above, and draw the same", async () => {
    await workbench.show("Permit");
    const chart = picture(workbench, permit);
    const before = await boxOf(chart);
    const drawn = await chart.innerHTML();
    await workbench.insertRowAbove("Permit", 1);
    await expect.poll(async () => (await boxOf(chart)).y).toBeGreaterThan(before.y + 20);
    expect(await chart.innerHTML()).toBe(drawn);
    await workbench.page.keyboard.press("Control+z");
    await expect.poll(async () => (await boxOf(chart)).y).toBeCloseTo(before.y, 0);
  });

  test("do not make the workbook count as changed", async () => {
    await openTemplate(workbench, chemicalBudget.question);
    workbench.asked.length = 0;
    await workbench.show("Actual");
    await picture(workbench, planned("Actual", chemicalBudget)).waitFor();
    await openTemplate(workbench, doseAndEffluent.question);
    expect(workbench.asked).toEqual([]);
  });

  test("stay whole with the frozen column in which they begin, and scroll as far as their end", async () => {
    const { page } = workbench;
    await openTemplate(workbench, chemicalBudget.question);
    await workbench.show("Actual");
    const chart = picture(workbench, planned("Actual", chemicalBudget));
    const before = await boxOf(chart);
    const scroll = async (by: number) => {
      const grid = await boxOf(page.locator("#grid"));
      await page.mouse.move(grid.x + grid.width / 2, grid.y + grid.height / 2);
      await page.mouse.wheel(by, 0);
    };
    const frames = page.locator(".chart-pane:has(.chart)");
    await scroll(200);
    await page.waitForTimeout(300);
    expect(await boxOf(chart)).toEqual(before);
    expect((await boxOf(frames)).x + (await boxOf(frames)).width).toBeGreaterThan(
      before.x + before.width,
    );
    await page.setViewportSize({ width: 800, height: 900 });
    await scroll(-400);
    await expect.poll(async () => (await boxOf(chart)).x).toBe(before.x);
    await scroll(2000);
    const end = async () => (await boxOf(chart)).x + before.width;
    await expect
      .poll(async () =>
        Math.abs((await end()) - (await boxOf(frames)).x - (await boxOf(frames)).width),
      )
      .toBeLessThan(2);
    await page.setViewportSize({ width: 1400, height: 900 });
  });

  test("pass beneath a frozen column where they begin beside it", async () => {
    const { page } = workbench;
    await openTemplate(workbench, doseAndEffluent.question);
    await workbench.show("Thirty days");
    const chart = picture(workbench, planned("Thirty days"));
    await workbench.select("A3");
    await page.locator('canvas[id^="univer-sheet-main"]').click({
      button: "right",
      position: { x: 100, y: 100 },
    });
    await page.getByText("Freeze", { exact: true }).hover();
    await page.getByText("Freeze first column", { exact: true }).click();
    await page.getByText("Freeze", { exact: true }).waitFor({ state: "hidden" });
    await page.waitForTimeout(300);
    const before = await boxOf(chart);
    await page.mouse.move(before.x + 100, before.y + 100);
    await page.mouse.wheel(300, 0);
    await expect.poll(async () => (await boxOf(chart)).x).toBeLessThan(before.x - 200);
    const frame = await boxOf(page.locator(".chart-pane:has(.chart)"));
    expect(frame.x).toBeGreaterThan((await boxOf(chart)).x);
    expect(frame.x).toBeGreaterThan((await boxOf(page.locator("#grid"))).x + 100);
  });

  test("log no error", () => {
    expect(workbench.errors).toEqual([]);
  });
});

interface Saved {
  readonly bytes: Buffer;
  readonly parts: Record<string, string>;
  readonly notice: string;
}

/** The parts of the saved file as texts, and what the page says of it. */
async function saved({ page }: WorkbenchPage): Promise<Saved> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  const bytes = await readFile(await download.path());
  const files = unzipSync(bytes);
  const parts = Object.fromEntries(
    Object.entries(files).map(([path, bytes]) => [path, strFromU8(bytes)]),
  );
  return { bytes, parts, notice: (await page.locator("#notice").textContent()) ?? "" };
}

const chartsIn = (parts: Record<string, string>) =>
  Object.keys(parts).filter((path) => /^xl\/charts\/chart\d+\.xml$/.test(path));

const rulesIn = (parts: Record<string, string>, sheet: number) => {
  const xml = parts[`xl/worksheets/sheet${sheet}.xml`] ?? "";
  const count = (element: RegExp) => [...xml.matchAll(element)].length;
  return [count(/<dataValidation /g), count(/<cfRule /g)];
};

describe("a saved template", () => {
  let workbench: WorkbenchPage;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
  });

  test("has each of its charts once", async () => {
    await workbench.show("Permit");
    await picture(workbench, planned("Permit")).waitFor();
    const { parts } = await saved(workbench);
    expect(chartsIn(parts)).toHaveLength(chartsOf(doseAndEffluent).length);
  });

  test("keeps charts, validation and conditional formats, at their cells, when rows are inserted", async () => {
    const before = (await saved(workbench)).parts;
    await workbench.insertRowAbove("Log", 1);
    await workbench.insertRowAbove("Permit", 1);
    const { parts, notice } = await saved(workbench);
    expect(notice).toBe("");
    expect(chartsIn(parts)).toEqual(chartsIn(before));
    const sheets = layOut(doseAndEffluent).sheets;
    for (const [index] of sheets.entries()) {
      expect(rulesIn(parts, index + 1)).toEqual(rulesIn(before, index + 1));
    }
    const dates = (all: Record<string, string>) => {
      const log =
        all[`xl/worksheets/sheet${sheets.findIndex(({ name }) => name === "Log") + 1}.xml`];
      return /<dataValidation type="date"[^>]*sqref="([^"]*)"/.exec(log ?? "")?.[1];
    };
    expect(dates(before)).toBe("A5:A34");
    expect(dates(parts)).toBe("A6:A35");
    const drawn = chartsIn(parts)
      .map((path) => parts[path] ?? "")
      .join("");
    expect(drawn).toContain("<c:f>Log!$A$6:$A$35</c:f>");
    expect(drawn).not.toContain("<c:f>Log!$A$5:$A$34</c:f>");
    expect(workbench.errors).toEqual([]);
  });

  test("keeps them under the new name of a sheet", async () => {
    const { page } = workbench;
    await workbench.show("Log");
    const tab = page.getByRole("tab", { name: "Log", exact: true });
    await tab.locator("xpath=self::*[@aria-selected='true']").waitFor();
    await tab.dblclick();
    await page.waitForFunction(() => document.activeElement?.textContent === "Log");
    const name = page.locator("main [role=tab] :focus");
    // The tab selects its name itself, a moment later.
    while ((await name.textContent()) !== "Mill log") {
      await page.keyboard.press("Control+a");
      await page.keyboard.type("Mill log");
    }
    await page.keyboard.press("Enter");
    await page.getByRole("tab", { name: "Mill log", exact: true }).waitFor();
    const { parts } = await saved(workbench);
    const drawn = chartsIn(parts)
      .map((path) => parts[path] ?? "")
      .join("");
    expect(drawn).toContain("<c:f>'Mill log'!$A$6:$A$35</c:f>");
  });
});

test("a sheet that is copied has its chart, and the copy draws its own cells", async () => {
  const workbench = await served.withTemplate("Dose and effluent");
  const { page } = workbench;
  const permit = planned("Permit");
  await workbench.show("Permit");
  const chart = picture(workbench, permit);
  await chart.waitFor();
  const before = await columnHeights(chart);
  await page.getByRole("tab", { name: "Permit", exact: true }).click({ button: "right" });
  await page.getByRole("button", { name: "Copy", exact: true }).click();
  const copy = page.getByRole("tab", { name: /^Permit ?\(Copy\)$/ });
  await copy.waitFor();
  if ((await copy.getAttribute("aria-selected")) !== "true") await copy.click();
  await expect.poll(() => columnHeights(chart)).toEqual(before);
  await workbench.type("C10", "100");
  await expect.poll(() => columnHeights(chart)).not.toEqual(before);
  await workbench.show("Permit");
  await expect.poll(() => columnHeights(chart)).toEqual(before);
  const { parts, notice } = await saved(workbench);
  expect(notice).toBe("");
  expect(chartsIn(parts)).toHaveLength(chartsOf(doseAndEffluent).length + 1);
  const tables = Object.entries(parts).flatMap(([path, xml]) =>
    path.startsWith("xl/tables/") ? [/displayName="([^"]*)"/.exec(xml)?.[1]?.toLowerCase()] : [],
  );
  expect(new Set(tables).size).toBe(tables.length);
});

describe("a saved template that is opened again", () => {
  let workbench: WorkbenchPage;
  let first: Saved;

  beforeAll(async () => {
    workbench = await served.withTemplate("Dose and effluent");
    await workbench.type("Permit!B6", "3000");
    first = await saved(workbench);
    await workbench.openFile("own copy.xlsx", first.bytes);
  });

  test("shows the pictures of its charts, each once", async () => {
    for (const { name, charts } of layOut(doseAndEffluent).sheets) {
      await workbench.show(name);
      for (const chart of charts) await picture(workbench, chart).waitFor({ state: "attached" });
      await workbench.page.waitForFunction(
        (count) => document.querySelectorAll(".chart[role=img]").length === count,
        charts.length,
      );
    }
  });

  test("draws the spilled cells as they now are", async () => {
    await workbench.show("Permit");
    const chart = picture(workbench, planned("Permit"));
    const before = await chart.innerHTML();
    await workbench.type("Permit!C10", "100");
    await expect.poll(() => chart.innerHTML()).not.toBe(before);
  });

  test("is saved in place again, also after a row came and went", async () => {
    await workbench.insertRowAbove("Permit", 1);
    await workbench.page.keyboard.press("Control+z");
    const { parts, notice } = await saved(workbench);
    expect(notice).not.toContain("written anew");
    expect(chartsIn(parts)).toEqual(chartsIn(first.parts));
    for (const path of chartsIn(parts)) expect(parts[path]).toBe(first.parts[path]);
  });

  test("keeps its charts and rules when it has to be written anew", async () => {
    await workbench.insertRowAbove("Permit", 1);
    const { parts, notice } = await saved(workbench);
    expect(notice).toContain("written anew");
    expect(chartsIn(parts)).toHaveLength(chartsIn(first.parts).length);
    const drawn = chartsIn(parts).map((path) => parts[path] ?? "");
    expect(drawn.some((chart) => chart.includes("<c:f>Permit!$A$11:$A$13</c:f>"))).toBe(true);
    for (const [index] of layOut(doseAndEffluent).sheets.entries())
      expect(rulesIn(parts, index + 1)).toEqual(rulesIn(first.parts, index + 1));
  });
});

describe.each([
  ["light", {}],
  ["dark", { colorScheme: "dark" }],
  ["forced colours", { forcedColors: "active" }],
] as const)("in %s", (_, options) => {
  test("a sheet with charts has no serious fault of accessibility", async () => {
    const workbench = await served.withTemplate("Dose and effluent");
    await workbench.look(options);
    await workbench.show("Thirty days");
    await picture(workbench, planned("Thirty days")).waitFor();
    expect(await seriousFindings(workbench.page)).toEqual([]);
  });
});
