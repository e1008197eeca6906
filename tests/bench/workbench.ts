import { type Browser, chromium } from "playwright-core";
import { findBrowser } from "../browser/shared/find-browser";
import { startWorkbench } from "../browser/workbench";
import { type Measured, median } from "./measure";

const ROUNDS = 5;

/** From navigation to the first computed workbook, against the same page with no functions in it. */
export async function workbench(): Promise<Measured[]> {
  const running = await startWorkbench();
  const browser = await chromium.launch(await findBrowser());
  try {
    await open(browser, running.address, true);
    const ratios: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const without = await open(browser, running.address, false);
      ratios.push((await open(browser, running.address, true)) / without);
    }
    return [
      {
        work: "workbench, navigation to the first computed workbook",
        measured: median(ratios),
        limit: 1.3,
        unit: "× the page with no functions",
        note: "headless browser, each time without a cache; dose-and-effluent",
      },
    ];
  } finally {
    await browser.close();
    await running.stop();
  }
}

async function open(browser: Browser, address: string, functions: boolean): Promise<number> {
  const page = await browser.newPage();
  if (!functions) {
    await page.route("**/functions.js", (route) =>
      route.fulfill({ contentType: "text/javascript", body: "var dosewright = { observe() {} };" }),
    );
    await page.route("**/functions.json", (route) => route.fulfill({ json: { functions: [] } }));
  }
  const start = performance.now();
  await page.goto(address);
  await page.waitForSelector("html[data-computed]");
  const time = performance.now() - start;
  await page.close();
  return time;
}
