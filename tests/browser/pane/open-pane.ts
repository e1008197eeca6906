import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { openBrowser, shared } from "../shared/shared";
import type { Shown, TestPage } from "./page";

export type Name = "Additives" | "Safety" | "Functions" | "Templates" | "Working";

/** How the pane may be met. */
export interface Look
  extends Pick<BrowserContextOptions, "colorScheme" | "forcedColors" | "reducedMotion"> {
  readonly viewport: { readonly width: number; readonly height: number };
}

export const LOOKS = {
  light: { viewport: { width: 420, height: 800 }, colorScheme: "light" },
  dark: { viewport: { width: 420, height: 800 }, colorScheme: "dark" },
  "high contrast": { viewport: { width: 420, height: 800 }, forcedColors: "active" },
  narrow: { viewport: { width: 320, height: 700 } },
  wide: { viewport: { width: 1000, height: 800 } },
  // What a pane of 320 pixels has left when it is enlarged to 200 %.
  enlarged: { viewport: { width: 160, height: 350 } },
} as const satisfies Readonly<Record<string, Look>>;

/** The pane in a browser, for one file of tests. */
export class OpenedPane {
  private constructor(
    private readonly browser: Browser,
    private readonly origin: string,
  ) {}

  static async start(): Promise<OpenedPane> {
    return new OpenedPane(await openBrowser(), await shared("pane"));
  }

  readonly faults: string[] = [];
  /** Of all tests of the file, until one fails in it. */
  private common: Page | undefined;

  /** The pane from its start: in the page of the file, which takes seconds to open and is opened once. */
  async page(look: Look = LOOKS.light, shown: Shown = {}): Promise<Page> {
    this.common ??= await this.open();
    await wear(this.common, look);
    await this.common.evaluate(
      (given) => (window as unknown as { page: TestPage }).page.show(given),
      shown,
    );
    await this.common.getByRole("tab", { name: "Additives" }).waitFor();
    return this.common;
  }

  /** What went wrong in the page, once; after that, or where a test failed, the next gets another page. */
  takeFaults(failed: boolean): readonly string[] {
    const faults = this.faults.splice(0);
    if (failed || faults.length > 0) this.common = undefined;
    return faults;
  }

  private async open(): Promise<Page> {
    const page = await this.browser.newPage();
    page.on("pageerror", (fault) => this.faults.push(fault.message));
    page.on("console", (message) => {
      if (message.type() === "error") this.faults.push(message.text());
    });
    await page.goto(this.origin);
    return page;
  }

  async stop(): Promise<void> {
    await this.browser.close();
  }
}

/** Gives a page another look, and waits until it has it. */
export async function wear(page: Page, { viewport, ...media }: Look): Promise<void> {
  await page.emulateMedia({
    colorScheme: null,
    forcedColors: null,
    reducedMotion: null,
    ...media,
  });
  await page.setViewportSize(viewport);
  await page.evaluate(
    () =>
      new Promise((resolve) =>
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve))),
      ),
  );
}

export const openTab = (page: Page, name: Name) => page.getByRole("tab", { name }).click();

/** Computes a cell in the page's sheet and selects it. */
export async function computeCell(
  page: Page,
  address: string,
  formula: string,
  id: string,
  ...given: unknown[]
): Promise<void> {
  await page.evaluate(
    (cell) => {
      const { compute, sheet } = (window as unknown as { page: TestPage }).page;
      compute(cell.address, cell.formula, cell.id, ...cell.given);
      sheet.select(cell.address);
    },
    { address, formula, id, given },
  );
}

/** What the pane asked the sheet to do. */
export const deedsOf = (page: Page) =>
  page.evaluate(() => (window as unknown as { page: TestPage }).page.sheet.deeds);

export const say = (page: Page) => page.locator(".fui-MessageBar").textContent();

/** What reaches beyond the right edge and is not in something that scrolls by itself. */
export const widerThan = (page: Page) =>
  page.evaluate(() => {
    if (document.documentElement.scrollWidth <= window.innerWidth) return [];
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      (getComputedStyle(element).overflowX !== "visible" || scrolls(element.parentElement));
    const beyond = [...document.querySelectorAll("#pane *")]
      .filter((element) => element.getBoundingClientRect().right > window.innerWidth)
      .filter((element) => !scrolls(element.parentElement))
      .map((element) => element.outerHTML.slice(0, 300));
    return [`${document.documentElement.scrollWidth} pixels`, ...beyond];
  });
