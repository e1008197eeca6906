import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { headersFor } from "../../src/build/headers";
import configurations from "../../webpack.config";
import { openBesideExcel, type Platform, serveBesideExcel } from "./beside-excel/serve";
import { buildInMemory } from "./build-in-memory";
import { type Served, serveFiles } from "./serve-files";
import { openBrowser, shared } from "./shared/shared";
import { filesIn } from "./whole-build";

/** Excel's own library, as a build copies it, in the add-in's page under the headers of the folder. */
let browser: Browser;
let served: Served;
let beside: Served;
const built = filesIn(await shared("built"));

beforeAll(async () => {
  served = await serveFiles(built, headersFor);
  beside = await serveBesideExcel();
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await beside?.close();
});

test("the copy is the vendor's, byte for byte, without its telemetry", () => {
  const library = path.dirname(
    createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"),
  );
  const copied = Object.keys(built).filter((name) => name.startsWith("office/"));
  expect(copied.length).toBeGreaterThan(100);
  for (const name of copied) {
    const original = readFileSync(path.join(library, "dist", name.slice("office/".length)));
    expect(built[name]?.equals(original), name).toBe(true);
    expect(name).not.toMatch(/telemetry|debug/);
  }
});

test("in a plain browser nothing is stopped but the library's own attempt at telemetry", async () => {
  const page = await browser.newPage();
  const [stopped, missing, errors]: [string[], string[], string[]] = [[], [], []];
  await page.exposeFunction("tellStopped", (what: string) => stopped.push(what));
  await page.addInitScript(() => {
    addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) => {
      const { tellStopped } = window as unknown as { tellStopped(what: string): void };
      tellStopped(`${effectiveDirective} ${blockedURI}`);
    });
  });
  page.on("pageerror", ({ message }) => errors.push(message));
  page.on("response", (response) => {
    if (response.status() >= 400) missing.push(response.url());
  });
  await page.goto(`${served.origin}/taskpane.html`);
  const attempt = "frame-src https://telemetryservice.firstpartyapps.oaspapps.com";
  await expect.poll(() => [...new Set(stopped)], { timeout: 15_000 }).toEqual([attempt]);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  expect(missing).toEqual([]);
  expect(errors).toEqual([]);
  await page.close();
});

const divisionByZero = { code: "#DIV/0!", type: "CustomFunctionError" };

const CALLS = [
  { id: "DOSE.PUMP", given: [[[8]], [[9.3]], [[0.03]], [[1.01]]] },
  { id: "DOSE.PUMP", given: [[[8]], [[9.3]], [[0.03]], null] },
  { id: "DOSE.TARGET", given: [[[6], [divisionByZero], [-1]], [[0.75]]] },
  { id: "DOSE.TARGET", given: [[[6]], [[75]]] },
  { id: "DOSE.CONVERT", given: [[[16]], "lb/short ton", "kg/t", null] },
  { id: "LIBRARY.ADDITIVE", given: ["no such starch", "retention", null] },
];

describe.each<[string, Platform, string]>([
  ["the web", "Web", "excel-web-16.00.js"],
  ["Windows", "Win32", "excel-win32-16.01.js"],
  ["the Mac", "Mac", "excel-mac-16.00.js"],
])("with Excel's library for %s", (_, platform, script) => {
  test("our functions are found, called and answered, and errors keep their messages", async () => {
    const { page, faults, asked } = await openBesideExcel(browser, beside, platform);
    const told = await page.evaluate((calls) => window.callFunctions(calls), CALLS);
    expect(told.map(([, sound, value]) => [sound, value])).toEqual([
      [true, [[expect.closeTo(2455.4455, 4)]]],
      [true, [[expect.closeTo(2480, 9)]]],
      [
        true,
        [
          [8],
          [expect.objectContaining({ basicValue: "#DIV/0!" })],
          [
            expect.objectContaining({
              basicValue: "#VALUE!",
              message: "retained is -1. Give 0 or more [kg/t].",
            }),
          ],
        ],
      ],
      [false, expect.stringMatching(/^overallRetention is 75\. Give a fraction/)],
      [true, [[8]]],
      [false, expect.stringMatching(/^The library has no additive "no such starch"\. The nearest/)],
    ]);
    const places = asked.map((url) => url.slice(beside.origin.length));
    expect(places).toEqual(
      expect.arrayContaining([
        "/office/office.js",
        `/office/${script}`,
        "/office/en-us/office_strings.js",
      ]),
    );
    expect(faults).toEqual([]);
    await page.close();
  });
});

test("a build that takes the library from its vendor holds no copy and says so in its headers", async () => {
  const addin = configurations({ office: "official" }).find(({ name }) => name === "addin");
  // Any script stands for the pane's: what is looked at are the page and the files around it.
  const script = "./src/host/place.ts";
  const files = await buildInMemory({ ...addin, entry: { taskpane: script, pane: script } });
  expect(Object.keys(files).filter((name) => name.startsWith("office/"))).toEqual([]);
  expect(String(files["taskpane.html"])).toContain(
    'src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"',
  );
  expect(String(files["headers.txt"])).toContain(
    "script-src 'self' https://appsforoffice.microsoft.com;",
  );
});
