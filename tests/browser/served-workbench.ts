import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { openBrowser } from "./browser";
import { type RunningWorkbench, startWorkbench, WorkbenchPage } from "./workbench";

/** `npm start` and a browser, there for all tests of a file. */
export interface ServedWorkbench {
  readonly running: RunningWorkbench;
  /** The workbench in a new page, computed. */
  open(options?: Parameters<Browser["newPage"]>[0]): Promise<WorkbenchPage>;
}

export function serveWorkbench(): ServedWorkbench {
  let running: RunningWorkbench;
  let browser: Browser;
  beforeAll(async () => {
    [running, browser] = await Promise.all([startWorkbench(), openBrowser()]);
  });
  afterAll(async () => {
    await browser?.close();
    await running?.stop();
  });
  return {
    get running() {
      return running;
    },
    open: (options = {}) => WorkbenchPage.open(browser, running.address, options),
  };
}
