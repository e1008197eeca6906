import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { openBrowser, shared } from "./shared/shared";
import { WorkbenchPage } from "./workbench";

/** `npm start` and a browser, there for all tests of a file. */
export interface ServedWorkbench {
  readonly address: string;
  /** The workbench in a new page, computed. */
  open(options?: Parameters<Browser["newPage"]>[0]): Promise<WorkbenchPage>;
}

export function serveWorkbench(): ServedWorkbench {
  let address: string;
  let browser: Browser;
  beforeAll(async () => {
    [address, browser] = await Promise.all([shared("workbench"), openBrowser()]);
  });
  afterAll(() => browser?.close());
  return {
    get address() {
      return address;
    },
    open: (options = {}) => WorkbenchPage.open(browser, address, options),
  };
}
