import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { headersFor } from "../../src/build/headers";
import configurations from "../../webpack.config";
import { openBrowser } from "./browser";
import { buildInMemory } from "./build-in-memory";
import { type Served, serveFiles } from "./serve-files";
import { filesIn } from "./whole-build";

/**
 * Excel's own library, as a build copies it, in the add-in's page under the headers of the folder. Its
 * scripts for Excel on the web, on Windows and on the Mac call our functions here as they do there: only
 * what lies behind their bridge to Excel is ours.
 */
let browser: Browser;
let served: Served;
const built = filesIn(inject("built"));

/** What stands before our functions in a page: the bridge, which notes what the library tells Excel. */
const BRIDGE = `
  window.told = [];
  window._richApiNativeBridge = {
    sendMessageToHost(text) {
      const { id, type, message } = JSON.parse(text);
      for (const { Name, ArgumentInfo } of message?.body?.Actions ?? []) {
        if (Name === "SetInvocationArrayResults") window.told.push(...ArgumentInfo.Arguments[0]);
      }
      const answer = { statusCode: 200, headers: {}, body: JSON.stringify({ Results: [] }) };
      if (type === 1) setTimeout(() => this.onMessageFromHost(JSON.stringify({ id, type: 2, message: answer })));
    },
  };
`;

beforeAll(async () => {
  served = await serveFiles(
    { ...built, "functions.js": BRIDGE + built["functions.js"] },
    headersFor,
  );
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

interface Seen {
  readonly page: Page;
  /** Which rule of the policy stopped what. */
  readonly stopped: readonly string[];
  readonly missing: readonly string[];
  readonly scripts: readonly string[];
  readonly errors: readonly string[];
}

async function open(query: string): Promise<Seen> {
  const page = await browser.newPage();
  const [stopped, missing, scripts, errors]: string[][] = [[], [], [], []];
  await page.exposeFunction("tellStopped", (what: string) => stopped?.push(what));
  await page.addInitScript(() => {
    addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) => {
      const { tellStopped } = window as unknown as { tellStopped(what: string): void };
      tellStopped(`${effectiveDirective} ${blockedURI}`);
    });
  });
  page.on("pageerror", ({ message }) => errors?.push(message));
  page.on("response", (response) => {
    const place = response.url().slice(served.origin.length).replace(/\?.*/, "");
    if (response.status() >= 400) missing?.push(place);
    if (place.startsWith("/office/")) scripts?.push(place);
  });
  await page.goto(`${served.origin}/taskpane.html${query}`);
  return { page, stopped, missing, scripts, errors } as Seen;
}

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
  const { page, stopped, missing, errors } = await open("");
  const attempt = "frame-src https://telemetryservice.firstpartyapps.oaspapps.com";
  await expect.poll(() => [...new Set(stopped)], { timeout: 15_000 }).toEqual([attempt]);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  expect(missing).toEqual([]);
  expect(errors).toEqual([]);
  await page.close();
});

/** A call as Excel sends it: the cells of each argument, the cell that calls, and "errors are allowed". */
const call = (number: number, id: string, given: readonly unknown[]) => [
  1,
  1000,
  "",
  JSON.stringify([number, id, given, "Sheet1!B2", 4]),
  number,
];
const divisionByZero = { code: "#DIV/0!", type: "CustomFunctionError" };

const CALLS = [
  call(1, "DOSE.PUMP", [[[8]], [[9.3]], [[0.03]], [[1.01]]]),
  call(2, "DOSE.PUMP", [[[8]], [[9.3]], [[0.03]], null]),
  call(3, "DOSE.TARGET", [[[6], [divisionByZero], [-1]], [[0.75]]]),
  call(4, "DOSE.TARGET", [[[6]], [[75]]]),
  call(5, "DOSE.CONVERT", [[[16]], "lb/short ton", "kg/t", null]),
  call(6, "LIBRARY.ADDITIVE", ["no such starch", "retention", null]),
];

describe.each([
  ["the web", "Web", "excel-web-16.00.js"],
  ["Windows", "Win32", "excel-win32-16.01.js"],
  ["the Mac", "Mac", "excel-mac-16.00.js"],
])("with Excel's library for %s", (_, platform, script) => {
  test("our functions are found, called and answered, and errors keep their messages", async () => {
    const { page, stopped, missing, scripts, errors } = await open(
      `?_host_Info=Excel$${platform}$16.01$en-US$$$$0`,
    );
    await page.waitForFunction(
      () => "Error" in ((window as { CustomFunctions?: object }).CustomFunctions ?? {}),
    );
    const told = await page.evaluate(async (entries) => {
      const { _richApiNativeBridge, told } = window as unknown as {
        _richApiNativeBridge: { onMessageFromHost(text: string): void };
        told: [number, boolean, unknown, number?][];
      };
      _richApiNativeBridge.onMessageFromHost(JSON.stringify({ type: 3, message: { entries } }));
      while (told.length < entries.length) await new Promise((resolve) => setTimeout(resolve, 20));
      return told.sort(([one], [other]) => one - other).map((answer) => answer.slice(0, 3));
    }, CALLS);

    expect(told).toEqual([
      [1, true, [[expect.closeTo(2455.4455, 4)]]],
      [2, true, [[expect.closeTo(2480, 9)]]],
      [
        3,
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
      [4, false, expect.stringMatching(/^overallRetention is 75\. Give a fraction/)],
      [5, true, [[8]]],
      [
        6,
        false,
        expect.stringMatching(
          /^The library has no additive "no such starch"\. The nearest names are: /,
        ),
      ],
    ]);
    expect(scripts).toEqual(
      expect.arrayContaining([
        "/office/office.js",
        `/office/${script}`,
        "/office/en-us/office_strings.js",
      ]),
    );
    expect(missing).toEqual([]);
    expect(stopped.filter((what) => !what.startsWith("frame-src"))).toEqual([]);
    // On the web the library looks for the frame of Excel around the page, which is not there.
    expect(errors.filter((error) => !error.includes("conversationId"))).toEqual([]);
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
