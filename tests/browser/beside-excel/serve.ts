import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { headersFor } from "../../../src/build/headers";
import { type Served, serveFiles } from "../serve-files";
import { shared } from "../shared/shared";
import { filesIn } from "../whole-build";

/** The workbook that Excel is said to have open, as a file. */
export const WORKBOOK = path.join(import.meta.dirname, "../../../templates/dose-and-effluent.xlsx");

/** The folder of a build under its headers, with the bridge before our functions; `changed` files go first. */
export async function serveBesideExcel(
  changed: Readonly<Record<string, Buffer>> = {},
): Promise<Served> {
  const files = filesIn(await shared("built"));
  const bridge = await shared("bridge");
  return serveFiles(
    { ...files, ...changed, "functions.js": `${bridge}\n${files["functions.js"]}` },
    headersFor,
  );
}

/** The platforms whose scripts Excel's library brings. */
export type Platform = "Web" | "Win32" | "Mac";

export interface BesideExcel {
  readonly page: Page;
  /** Errors of scripts, and what the policy stopped. */
  readonly faults: readonly string[];
  readonly asked: readonly string[];
}

/** Opens the add-in's page with Excel's own library for a platform. */
export async function openBesideExcel(
  browser: Browser,
  { origin }: Served,
  platform: Platform,
): Promise<BesideExcel> {
  const page = await browser.newPage({ viewport: { width: 340, height: 900 } });
  const faults: string[] = [];
  const asked: string[] = [];
  page.on("pageerror", ({ message }) => {
    // On the web the library looks for the frame of Excel around the page, which is not there.
    if (!message.includes("conversationId")) faults.push(message);
  });
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  page.on("request", (request) => asked.push(request.url()));
  await page.addInitScript((file) => {
    window.workbookFile = file;
    // The library looks for it once, which may be before our functions are there.
    const waiting: string[] = [];
    window._richApiNativeBridge = {
      waiting,
      onMessageFromHost: () => undefined,
      sendMessageToHost: (text) => void waiting.push(text),
    };
  }, readFileSync(WORKBOOK).toString("base64"));
  await page.goto(`${origin}/taskpane.html?_host_Info=Excel$${platform}$16.01$en-US$$$$0`);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  return { page, faults, asked };
}
