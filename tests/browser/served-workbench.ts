import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll } from "vitest";
import { openBrowser, shared } from "./shared/shared";
import { WorkbenchPage } from "./workbench";

/** `npm start` and a browser, there for all tests of a file. */
export interface ServedWorkbench {
  readonly address: string;
  /** The workbench in a page of its own, computed. */
  open(options?: Parameters<Browser["newPage"]>[0]): Promise<WorkbenchPage>;
  /**
   * The page that the tests of a file share, with a template in it. A page takes seconds to open, another
   * workbook in it does not: each test begins with its own, and leaves the page to the next.
   */
  withTemplate(title: string): Promise<WorkbenchPage>;
  /** The same with a file in it. */
  withFile(name: string, bytes: Uint8Array): Promise<WorkbenchPage>;
}

/** What lies in a page that has just been opened. */
const FIRST = "Dose and effluent";

export function serveWorkbench(): ServedWorkbench {
  let address: string;
  let browser: Browser;
  /** Of the tests of the file, until one fails in it. */
  let common: WorkbenchPage | undefined;
  beforeAll(async () => {
    [address, browser] = await Promise.all([shared("workbench"), openBrowser()]);
  });
  afterEach(({ task }) => {
    if (task.result?.state === "fail") common = undefined;
  });
  afterAll(() => browser?.close());

  const open = (options = {}) => WorkbenchPage.open(browser, address, options);

  /** Puts another workbook into the common page. */
  async function begin(
    put: (page: WorkbenchPage, isNew: boolean) => Promise<void>,
  ): Promise<WorkbenchPage> {
    const isNew = common === undefined;
    common ??= await open();
    await common.tidy();
    await put(common, isNew);
    common.forget();
    return common;
  }

  return {
    get address() {
      return address;
    },
    open,
    withTemplate: (title) =>
      begin(async (page, isNew) => {
        if (!isNew || title !== FIRST) await page.openTemplate(title);
      }),
    withFile: (name, bytes) => begin((page) => page.openFile(name, bytes)),
  };
}
