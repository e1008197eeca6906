import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { headersFor } from "../../src/build/headers";
import { seriousFindings } from "./axe";
import { type Served, serveFiles } from "./serve-files";
import { openBrowser, shared } from "./shared/shared";
import { filesIn } from "./whole-build";

/** The pages that a build writes, under the headers that go with them. */
let browser: Browser;
let served: Served;
beforeAll(async () => {
  served = await serveFiles(filesIn(await shared("built")), headersFor);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

async function open(name: string): Promise<{ page: Page; faults: string[]; asked: string[] }> {
  const page = await browser.newPage();
  const faults: string[] = [];
  const asked: string[] = [];
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  page.on("request", (request) => asked.push(request.url()));
  await page.goto(`${served.origin}/${name}`);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  return { page, faults, asked };
}

test("the pane as a page of its own is whole without any other machine, and breaks no rule of its headers", async () => {
  const { page, faults, asked } = await open("pane.html");
  for (const name of ["Safety", "Functions", "Templates", "Working", "Additives"]) {
    await page.getByRole("tab", { name }).click();
    await page.getByRole("tabpanel", { name }).waitFor();
  }
  expect(asked.filter((url) => !url.startsWith(served.origin))).toEqual([]);
  expect(asked.filter((url) => /office|functions\.js$/.test(url))).toEqual([]);
  expect(faults).toEqual([]);
  expect(await seriousFindings(page, "#pane")).toEqual([]);
});

test("what the pane says of a function opens as a page of help", async () => {
  const { page } = await open("pane.html");
  await page.getByRole("tab", { name: "Functions" }).click();
  await page.getByRole("button", { name: /^DOSE\.PUMP/ }).click();
  const opened = page.waitForEvent("popup");
  await page.getByRole("link", { name: "The same as a page of its own" }).click();
  await (await opened).getByRole("heading", { name: "WETEND.DOSE.PUMP" }).waitFor();
});

test("the add-in's page registers the functions before it asks for the pane, and shows it outside Excel, too", async () => {
  const { page, asked } = await open("taskpane.html");
  const place = (part: RegExp) => asked.findIndex((url) => part.test(url));
  expect(place(/functions\.js$/)).toBeGreaterThanOrEqual(0);
  expect(place(/reference\.json$/)).toBeGreaterThan(place(/functions\.js$/));
  await page.getByRole("tab", { name: "Working" }).click();
  await page.getByText("There is no sheet here.").last().waitFor();
});
