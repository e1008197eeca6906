import { type ChildProcess, spawn } from "node:child_process";
import { readFile } from "node:fs/promises";
import path from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { USUAL_ROW_HEIGHT } from "../../src/workbench/book/grid-book";

const root = path.join(import.meta.dirname, "../..");

export interface RunningWorkbench {
  readonly address: string;
  /** All that it has printed. */
  readonly printed: () => string;
  /** Ends it as Ctrl-C does, or by another signal; gives its exit code. */
  stop(signal?: NodeJS.Signals): Promise<number | null>;
}

/** `npm start`, as a person runs it. */
export async function startWorkbench(): Promise<RunningWorkbench> {
  const command = path.join(root, "src/commands/start.ts");
  const child = spawn(process.execPath, ["--import", "tsx", command], { cwd: root });
  let printed = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (text) => (printed += text));
  const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on("data", () => {
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(printed)?.[0];
      if (found) resolve(found);
    });
    void ended.then((code) => reject(new Error(`npm start ended with ${code}: ${printed}`)));
  });
  return { address, printed: () => printed, stop: (signal) => stop(child, ended, signal) };
}

function stop(
  child: ChildProcess,
  ended: Promise<number | null>,
  signal: NodeJS.Signals = "SIGINT",
): Promise<number | null> {
  child.kill(signal);
  return ended;
}

const USUAL_SIZE = { width: 1400, height: 900 };

/** How the page may be met. */
export type Look = Pick<BrowserContextOptions, "viewport" | "colorScheme" | "forcedColors">;

/** The workbench in a page, worked as a person works it: by name box, keys and the status line. */
export class WorkbenchPage {
  readonly errors: string[] = [];
  readonly requests: string[] = [];
  /** What the page asked; it was always answered with yes. */
  readonly asked: string[] = [];

  private constructor(readonly page: Page) {
    page.on("console", (message) => message.type() === "error" && this.errors.push(message.text()));
    page.on("pageerror", (error) => this.errors.push(error.stack ?? error.message));
    page.on("request", (request) => this.requests.push(request.url()));
    page.on("dialog", (dialog) => {
      this.asked.push(dialog.message());
      void dialog.accept();
    });
  }

  static async open(
    browser: Browser,
    address: string,
    options: Parameters<Browser["newPage"]>[0] = {},
  ): Promise<WorkbenchPage> {
    const page = await browser.newPage({ viewport: USUAL_SIZE, ...options });
    const workbench = new WorkbenchPage(page);
    await page.goto(address);
    await workbench.computed();
    return workbench;
  }

  /** Another look or size; the pane is open where it is when the page opens so. */
  async look({ viewport, ...media }: Look): Promise<void> {
    const { page } = this;
    await page.emulateMedia({ colorScheme: null, forcedColors: null, ...media });
    await page.setViewportSize(viewport ?? USUAL_SIZE);
    const isRoomy = await page.evaluate(() => matchMedia("(min-width: 1100px)").matches);
    const button = page.getByRole("button", { name: "Pane", exact: true });
    if ((await button.getAttribute("aria-expanded")) !== String(isRoomy)) await button.click();
  }

  /** Puts back what a test may leave beside its workbook: an open menu, a look, a size. */
  async tidy(): Promise<void> {
    await this.page.keyboard.press("Escape");
    await this.look({});
  }

  /** From here on what the page asks and its errors are another test's. */
  forget(): void {
    this.asked.length = 0;
    this.errors.length = 0;
  }

  /** Waits until every formula has its value. */
  async computed(): Promise<void> {
    await this.page.waitForSelector("html[data-computed]");
  }

  /** One of the list under "Templates", in the stead of what is open. */
  async openTemplate(title: string): Promise<void> {
    await this.page.locator("#templates summary").click();
    await this.page.evaluate(() => delete document.documentElement.dataset.computed);
    await this.page.locator("#templates").getByRole("button", { name: title }).click();
    await this.computed();
  }

  /** A cell or a range of the sheet that is shown, or, with its sheet's name, of any: "Thirty days!B4". */
  async select(reference: string): Promise<void> {
    const [range = "", sheet] = reference.split("!").reverse();
    if (sheet !== undefined) await this.show(sheet);
    const box = this.page.getByLabel("Cell or name to go to");
    await box.fill(range);
    await box.press("Enter");
    await this.page.waitForFunction((first) => {
      const isInBox =
        document.activeElement?.getAttribute("aria-label") === "Cell or name to go to";
      return !isInBox && document.querySelector("#status .address")?.textContent === first;
    }, range.split(":")[0]);
  }

  /** The cells are cut or copied when the browser has what was there, a moment after the keys. */
  async copy(range: string, keys: "Control+c" | "Control+x" = "Control+c"): Promise<void> {
    const nothing = "Nothing was copied.";
    await this.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await this.select(range);
    await this.page.evaluate((text) => navigator.clipboard.writeText(text), nothing);
    await this.page.keyboard.press(keys);
    const copied = async (before: string) => (await navigator.clipboard.readText()) !== before;
    await this.page.waitForFunction(copied, nothing);
  }

  async paste(range: string): Promise<void> {
    await this.select(range);
    await this.page.keyboard.press("Control+v");
  }

  async show(sheet: string): Promise<void> {
    const tab = this.page.getByRole("tab", { name: sheet, exact: true });
    // A second click at once would be a double one, which renames.
    if ((await tab.getAttribute("aria-selected")) === "true") return;
    await tab.click();
    // The status line tells of it in the next frame.
    await this.page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))),
    );
  }

  /** What the status line says of a cell, once it is computed. */
  async read(address: string): Promise<{ value: string; message: string }> {
    await this.computed();
    await this.select(address);
    const said = await this.page.waitForFunction((selected) => {
      const kinds = ["address", "value", "message"];
      const [shown, value = "", message = ""] = kinds.map(
        (kind) => document.querySelector(`#status .${kind}`)?.textContent ?? "",
      );
      return shown === selected && { value, message };
    }, address.split("!").at(-1));
    return (await said.jsonValue()) as { value: string; message: string };
  }

  /** Types into a cell and waits until all that follows from it is computed. */
  async type(address: string, text: string): Promise<void> {
    await this.computed();
    await this.select(address);
    await this.page.evaluate(() => delete document.documentElement.dataset.computed);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Enter");
    await this.computed();
  }

  /** What "Save .xlsx" hands out, and what the page says of it. */
  async save(): Promise<{ readonly bytes: Buffer; readonly notice: string }> {
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.page.getByRole("button", { name: "Save .xlsx" }).click(),
    ]);
    const bytes = await readFile(await download.path());
    return { bytes, notice: (await this.page.locator("#notice").textContent()) ?? "" };
  }

  /** A file that is opened as a person opens it. */
  async openFile(name: string, bytes: Uint8Array): Promise<void> {
    await this.page.evaluate(() => delete document.documentElement.dataset.computed);
    await this.page
      .locator("#file")
      .setInputFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });
    await this.computed();
  }

  /** A place on the grid, from its upper left corner. */
  async onGrid(x: number, y: number): Promise<[number, number]> {
    const canvas = await this.page.locator('canvas[id^="univer-sheet-main"]').boundingBox();
    return [(canvas?.x ?? 0) + x, (canvas?.y ?? 0) + y];
  }

  /** By the menu of the row's header, as a person does it. The rows above it have the usual height. */
  async insertRowAbove(sheet: string, row: number, count = 1): Promise<void> {
    await this.select(`${sheet}!A${row}`);
    await this.page.evaluate(() => delete document.documentElement.dataset.computed);
    const canvas = await this.page.locator('canvas[id^="univer-sheet-main"]').boundingBox();
    const at = { x: 20, y: (canvas?.y ?? 0) + 20 + (row - 0.5) * USUAL_ROW_HEIGHT };
    await this.page.mouse.click(at.x, at.y);
    // The name box tells when the whole row is selected.
    await this.page
      .locator(`[aria-label="Cell or name to go to"][value="${row}:${row}"]`)
      .waitFor();
    await this.page.mouse.click(at.x, at.y, { button: "right" });
    const item = this.page.getByText("rows above");
    if (count > 1) await item.locator("input").fill(String(count));
    await item.click({ position: { x: 8, y: 8 } });
    await this.computed();
  }
}
