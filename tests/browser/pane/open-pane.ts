import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { openBrowser, shared } from "../shared/shared";
import type { TestPage } from "./page";

export type Name = "Additives" | "Safety" | "Functions" | "Templates" | "Working";

/** How the pane may be met. */
export const LOOKS: Readonly<Record<string, BrowserContextOptions>> = {
  light: { viewport: { width: 420, height: 800 }, colorScheme: "light" },
  dark: { viewport: { width: 420, height: 800 }, colorScheme: "dark" },
  "high contrast": { viewport: { width: 420, height: 800 }, forcedColors: "active" },
  narrow: { viewport: { width: 320, height: 700 } },
  wide: { viewport: { width: 1000, height: 800 } },
  // What a pane of 320 pixels has left when it is enlarged to 200 %.
  enlarged: { viewport: { width: 160, height: 350 } },
};

/** The pane in a browser, for one file of tests. */
export class OpenedPane {
  private constructor(
    private readonly browser: Browser,
    private readonly origin: string,
  ) {}

  static async start(): Promise<OpenedPane> {
    return new OpenedPane(await openBrowser(), await shared("pane"));
  }

  /** A fresh page; a fault in it fails the test that closes it. */
  async page(options: BrowserContextOptions = LOOKS.light ?? {}, query = ""): Promise<Page> {
    const context = await this.browser.newContext(options);
    const page = await context.newPage();
    page.on("pageerror", (fault) => this.faults.push(fault.message));
    page.on("console", (message) => {
      if (message.type() === "error") this.faults.push(message.text());
    });
    await page.goto(`${this.origin}/${query}`);
    await page.getByRole("tab", { name: "Additives" }).waitFor();
    return page;
  }

  readonly faults: string[] = [];

  async stop(): Promise<void> {
    await this.browser.close();
  }
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
