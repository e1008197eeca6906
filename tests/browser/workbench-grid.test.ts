/** How the grid answers to keys, the clipboard and jumps, beyond what its library does by itself. */
import { readFile } from "node:fs/promises";
import { beforeAll, describe, expect, test } from "vitest";
import { USUAL_COLUMN_WIDTH, USUAL_ROW_HEIGHT } from "../../src/workbench/book/grid-book";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import { cell } from "../engine/sheet";
import { rawWorkbook } from "../workbook/raw-workbook";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
let workbench: WorkbenchPage;

const open = async (title: string) => {
  workbench = await served.withTemplate(title);
};
const value = async (address: string) => (await workbench.read(address)).value;

const tabs = () => workbench.page.locator("main [role=tab]");

describe("keys beside the grid", () => {
  beforeAll(async () => {
    await open("Blank workbook");
    for (const [address, text] of Object.entries({ A1: "1", A2: "2", A3: "3" }))
      await workbench.type(address, text);
    await workbench.page.getByRole("button", { name: "Add a sheet" }).click();
    await tabs().nth(1).waitFor();
  });

  test("go to the grid after a press on a tab", async () => {
    const { page } = workbench;
    await tabs().first().click();
    await workbench.select("A3");
    await tabs().nth(1).click();
    await tabs().first().click();
    await page.keyboard.press("ArrowDown");
    await page.locator("#status .address", { hasText: /^A4$/ }).waitFor();
  });

  test("and after a sheet is renamed", async () => {
    const { page } = workbench;
    // A double click in which a longer press could begin.
    await page.waitForTimeout(600);
    await tabs().first().dblclick();
    await page.waitForTimeout(600);
    await page.keyboard.type("Mine");
    await page.keyboard.press("Enter");
    await expect.poll(() => tabs().allTextContents()).toEqual(["Mine", "Sheet2"]);
    await page.locator("[data-u-comp=editor]:focus").waitFor({ state: "attached" });
    await page.keyboard.press("ArrowDown");
    await page.locator("#status .address", { hasText: /^A5$/ }).waitFor();
    await page.keyboard.press("Control+z");
    await expect.poll(() => tabs().allTextContents()).toEqual(["Sheet1", "Sheet2"]);
    await page.keyboard.press("Control+z");
    await expect.poll(() => tabs().allTextContents()).toEqual(["Sheet1"]);
  });

  test("and its tab stays in its place where the name was given at once", async () => {
    const { page } = workbench;
    const places = () =>
      tabs().evaluateAll((all) => all.map((tab) => getComputedStyle(tab).position));
    const before = await places();
    await page.waitForTimeout(600);
    await tabs().first().dblclick();
    await page.keyboard.press("Enter");
    // As long as a press that would move the tab.
    await page.waitForTimeout(700);
    expect(await places()).toEqual(before);
  });

  test("undo and do again with the focus on a tab that was reached by keys", async () => {
    const { page } = workbench;
    await tabs().first().focus();
    await page.keyboard.press("Control+z");
    await expect.poll(() => value("A3")).toBe("");
    await tabs().first().focus();
    await page.keyboard.press("Control+y");
    await expect.poll(() => value("A3")).toBe("3");
  });

  test("undo after a click into the empty space of the pane", async () => {
    const { page } = workbench;
    await page
      .locator("#pane [role=tabpanel]")
      .first()
      .click({ position: { x: 2, y: 2 } });
    await page.keyboard.press("Control+z");
    await expect.poll(() => value("A3")).toBe("");
    await page
      .locator("#pane [role=tabpanel]")
      .first()
      .click({ position: { x: 2, y: 2 } });
    await page.keyboard.press("Control+Shift+z");
    await expect.poll(() => value("A3")).toBe("3");
  });

  test("in a field of the pane undo what was typed there, and nothing in the grid", async () => {
    const { page } = workbench;
    await page.locator("#pane").getByRole("searchbox").first().fill("starch");
    await page.keyboard.press("Control+z");
    expect(await value("A3")).toBe("3");
  });
});

test("Days have no sum, and days beside numbers are counted only.", async () => {
  await open("Blank workbook");
  const cells = { A1: "2026-11-25", A2: "2026-11-27", B1: "3", B2: "5" };
  for (const [address, text] of Object.entries(cells)) await workbench.type(address, text);
  const told = async (range: string) => {
    await workbench.select(range);
    const sums = workbench.page.locator("#grid span:not(:has(*))", { hasText: /^\w+( \w+)?: / });
    return new Set(await sums.allTextContents());
  };
  await expect.poll(() => told("B1:B2")).toContain("Sum: 8");
  await expect.poll(() => told("A1:A2")).toContain("Average: 2026-11-26");
  expect(await told("A1:A2")).not.toContain("Sum: 92702");
  await expect.poll(() => told("A1:B2")).toEqual(new Set(["Count: 4", "Numerical Count: 4"]));
});

test("Text that is pasted takes the look of its cells, and gives a form to cells that have none.", async () => {
  await open("Dose ladder");
  const { page } = workbench;
  await page.context().grantPermissions(["clipboard-write"]);
  const paste = async (address: string, text: string) => {
    await page.evaluate((written) => navigator.clipboard.writeText(written), text);
    await workbench.paste(address);
  };
  await paste("Results!E5", "2.2\t60\ntorn\t61");
  await expect.poll(() => value("E5")).toBe("2.2");
  expect(Number(await value("G5"))).toBeCloseTo(2200 / 60, 9);
  expect(await value("G6")).toBe("");
  await paste("M30", "2025-01-06\t12%");
  await expect.poll(() => value("M30")).toBe("2025-01-06");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  const { book } = await readWorkbook(await readFile(await download.path()), functionNames([]));
  const styleOf = (address: string) => cell(book, address, "Results")?.style ?? "";
  for (const [pasted, untouched] of ["E5 E7", "F6 F7"].map((pair) => pair.split(" ")))
    expect(styleOf(pasted as string)).toBe(styleOf(untouched as string));
  expect(book.styles[styleOf("N30")]?.format).toBe("0%");
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await expect.poll(() => value("E5")).toBe("1.951");
});

describe("the clipboard", () => {
  const copy = async (from: string, to: string) => {
    await workbench.copy(from);
    await workbench.paste(to);
  };

  test("pastes what breaks a rule, and says how often, where first, and what is asked for", async () => {
    await open("Dose and effluent");
    await workbench.show("Log");
    const said = () => workbench.page.locator("#status .message").textContent();
    await copy("A1", "B30:B32");
    await expect
      .poll(said)
      .toMatch(/^3 pasted cells break the rules for their entries, the first is B30\. [A-Z].+\.$/);
    await workbench.select("B31");
    expect(await said()).not.toContain("pasted");
    expect(await value("B31")).toBe("Log");
    await copy("A1", "C30");
    await expect
      .poll(said)
      .toMatch(/^A pasted cell breaks the rule for its entries: C30\. [A-Z].+\.$/);
    await copy("B29", "B30");
    await expect.poll(() => value("B30")).toBe("332");
    await expect.poll(said).not.toContain("pasted");
  });

  test("pastes a formula that spills as itself, and what it spilled without it as values", async () => {
    await open("Blank workbook");
    await workbench.type("A1", "=SEQUENCE(3,2)");
    await copy("A1:B3", "D1");
    await expect.poll(() => value("E3")).toBe("6");
    await copy("A2:B3", "G1");
    await expect.poll(() => value("H2")).toBe("6");
    await workbench.type("A1", "=SEQUENCE(3,2,10)");
    expect([await value("E3"), await value("G1"), await value("H2")]).toEqual(["6", "3", "6"]);
    await workbench.select("D1");
    await workbench.page.keyboard.press("Delete");
    await expect.poll(() => value("E3")).toBe("");
  });
});

test("What is filled into cells and breaks their rule is told as what is pasted is.", async () => {
  await open("Dose and effluent");
  await workbench.show("Log");
  const { page } = workbench;
  const said = () => page.locator("#status .message").textContent();
  await workbench.select("B4:B7");
  await page.keyboard.press("Control+d");
  await expect
    .poll(said)
    .toMatch(/^3 filled cells break the rules for their entries, the first is B5\. [A-Z].+\.$/);
  expect(await value("B7")).toBe(await value("B4"));
  await workbench.select("B20:B21");
  await page.keyboard.press("Control+d");
  await expect.poll(() => value("B21")).toBe(await value("B20"));
  await expect.poll(said).not.toContain("filled");
});

test("Keys go on by pages, to the ends of a row and to the first and the last cell beside what is frozen; with Shift they select.", async () => {
  await open("Dose and effluent");
  await workbench.select("Log!E10");
  const { page } = workbench;
  const box = page.getByLabel("Cell or name to go to");
  const press = async (key: string, range: RegExp | string) => {
    await page.keyboard.press(key);
    await expect.poll(() => box.inputValue()).toMatch(range);
  };
  await press("PageDown", /^E(1[5-9]|[2-9]\d)$/);
  await press("PageUp", "E10");
  await press("Home", "B10");
  await press("Home", "A10");
  await press("End", "S10");
  await press("Control+End", "S34");
  await press("Control+Home", "B5");
  await press("Shift+End", "B5:S5");
  await press("Control+Shift+End", "B5:S34");
  await press("Shift+Home", "B5:B34");
  await workbench.select("B5:C6");
  await press("Shift+Space", "5:6");
  await workbench.select("B5:C6");
  await press("Control+Space", "B:C");
  // They belong to what is typed while there is any.
  await workbench.select("B5");
  await page.keyboard.type("12");
  await page.keyboard.press("Home");
  await page.keyboard.type("3");
  await page.keyboard.press("Enter");
  await expect.poll(() => value("B5")).toBe("312");
});

describe("the name box", () => {
  const go = async (address: string) => {
    const box = workbench.page.getByLabel("Cell or name to go to");
    await box.fill(address);
    await box.press("Enter");
  };
  const shown = async () => {
    const { page } = workbench;
    const tab = page.locator("main [role=tab][aria-selected=true]");
    return `${await tab.textContent()}: ${await page.locator("#status .address").textContent()}`;
  };
  const sum = () => workbench.page.getByText(/^Sum: /).textContent();

  beforeAll(() => open("Dose and effluent"));

  test("takes cells of another sheet, and gives the keys back to the grid", async () => {
    await go("Log!A5");
    await expect.poll(shown).toBe("Log: A5");
    await workbench.page.keyboard.press("ArrowDown");
    await expect.poll(shown).toBe("Log: A6");
    await go("'thirty days'!$B$4:$B$5");
    await expect.poll(shown).toBe("Thirty days: B4");
    await go("Log!B5:B6");
    await expect.poll(sum).toBe("Sum: 686");
  });

  test("adds whole columns and rows up", async () => {
    await go("Log!B:B");
    await expect.poll(sum).toBe("Sum: 10,081");
    await go("C:C");
    await expect.poll(sum).toBe("Sum: 0.294");
    await go("'Thirty days'!5:6");
    await expect.poll(sum).toBe("Sum: 3,559.366");
  });

  test("says which sheet is not there", async () => {
    await go("Lgo!A5");
    await expect
      .poll(() => workbench.page.locator("#status .message").textContent())
      .toBe("There is no sheet with the name Lgo.");
    expect(await shown()).toBe("Thirty days: A5");
  });
});

test("The tab of the sheet that is shown stays in view where the strip is narrow.", async () => {
  await open("Dose and effluent");
  await workbench.look({ viewport: { width: 320, height: 700 } });
  const { page } = workbench;
  const shown = page.locator("main [role=tab][aria-selected=true]");
  const inView = async () => {
    const [tab, strip] = [await shown.boundingBox(), await page.getByRole("tablist").boundingBox()];
    if (!tab || !strip) return false;
    // But for parts of a pixel.
    return tab.x > strip.x - 1 && tab.x + tab.width < strip.x + strip.width + 1;
  };
  await workbench.show("Log");
  const box = page.getByLabel("Cell or name to go to");
  await box.fill("B10:B12");
  await box.press("Enter");
  // Beside the sums there is less room for it.
  await page
    .getByText(/^(Count|Max): /)
    .first()
    .waitFor();
  await expect.poll(inView).toBe(true);
  await box.fill("codLimit");
  await box.press("Enter");
  await expect.poll(() => shown.textContent()).toBe("Thirty days");
  await expect.poll(inView).toBe(true);
});

describe("the lists of names and of sheets", () => {
  beforeAll(() => open("Dose and effluent"));

  test("are worked by keys, and have no serious fault of accessibility", async () => {
    const { page } = workbench;
    const focused = () => page.evaluate(() => document.activeElement?.textContent ?? "");
    const names = page.getByRole("button", { name: "Names in this workbook" });
    await names.press("Enter");
    await expect.poll(focused).toMatch(/^wanted/);
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.locator("#status .address", { hasText: /^B6$/ }).waitFor();
    await page.keyboard.press("Escape");
    const sheets = page.getByRole("button", { name: "All sheets" });
    await sheets.click();
    await page.getByRole("menuitem").first().waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.press("Escape");
  });

  test("and so does the panel of all names", async () => {
    const { page } = workbench;
    await page.getByRole("button", { name: "Names in this workbook" }).press("Enter");
    await page.getByRole("button", { name: /^All names/ }).press("Enter");
    await page.getByRole("group", { name: "All names" }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole("button", { name: "Close sidebar" }).click();
  });
});

test("Rows out of view are measured in idle time as long as there are any, and their workbook.", async () => {
  const rows = [1, 2000].map((row) => `<row r="${row}"><c r="A${row}"><v>1</v></c></row>`);
  const file = rawWorkbook({ sheets: { S: `<sheetData>${rows.join("")}</sheetData>` } });
  workbench = await served.withFile("long.xlsx", file);
  const { page } = workbench;
  await page.evaluate(() => {
    const held = new Map<number, IdleRequestCallback>();
    const { requestIdleCallback, cancelIdleCallback } = window;
    let last = 0;
    Object.assign(window, {
      held,
      own: { requestIdleCallback, cancelIdleCallback },
      requestIdleCallback: (call: IdleRequestCallback) => {
        held.set(++last, call);
        return last;
      },
      cancelIdleCallback: (id: number) => held.delete(id),
    });
  });
  /** Gives the time that was asked for, ten times at most; how many ask for more. */
  const idle = () =>
    page.evaluate(() => {
      const { held } = window as unknown as { held: Map<number, IdleRequestCallback> };
      for (let times = 0; times < 10; times++) {
        const calls = [...held.values()];
        held.clear();
        for (const call of calls) call({ didTimeout: false, timeRemaining: () => 50 });
      }
      return held.size;
    });
  const empty = async () => {
    await workbench.select("A1:C1900");
    await page.keyboard.press("Delete");
    await expect.poll(() => value("A1")).toBe("");
  };
  await empty();
  expect(await idle()).toBe(0);
  await page.keyboard.press("Control+z");
  await expect.poll(() => value("A1")).toBe("1");
  await empty();
  await workbench.openTemplate("Blank workbook");
  expect(await idle()).toBe(0);
  await page.evaluate(() => Object.assign(window, (window as unknown as { own: object }).own));
  expect(workbench.errors).toEqual([]);
});

describe("a long formula", () => {
  const terms = Array.from({ length: 40 }, (_, i) => `SUM(A${i + 9}:B${i + 12})*$C$${i + 9}`);
  const formula = `=${terms.join("+")}`;

  /** What the grid does for keys, by its own names. */
  interface Done {
    laidOut: number;
    made: number;
    channels: number;
    segmented: number;
    textsLaidOut: number;
  }

  beforeAll(async () => {
    const { page } = workbench;
    await workbench.openTemplate("Blank workbook");
    await workbench.type("A5", "7");
    await page.getByRole("button", { name: "Add a sheet" }).click();
    await tabs().nth(1).waitFor();
    await workbench.type("A4", "30");
    await tabs().first().click();
    await page.evaluate(() => {
      const none = { laidOut: 0, made: 0, channels: 0, segmented: 0, textsLaidOut: 0 };
      const done: Done = Object.assign(window, { done: none }).done;
      const count = (
        { prototype }: { prototype: Record<string, (...given: unknown[]) => unknown> },
        method: string,
        what: keyof Done,
      ) => {
        const act = prototype[method];
        prototype[method] = function (...given) {
          done[what] += 1;
          return act?.apply(this, given);
        };
      };
      // biome-ignore lint/suspicious/noExplicitAny: the grid's packages as its page holds them.
      const { gridPackages: grid } = window as any;
      const { SelectionControl } = grid["@univerjs/sheets-ui"];
      count(SelectionControl, "_updateLayoutOfSelectionControl", "laidOut");
      count(SelectionControl, "_initializeSheetBody", "made");
      count(grid["@univerjs/engine-render"].DocumentSkeleton, "calculate", "textsLaidOut");
      count(MessagePort as never, "postMessage", "channels");
      count(Intl.Segmenter as never, "segment", "segmented");
    });
  });

  async function doneFor(key: string): Promise<Done> {
    const { page } = workbench;
    // The grid does some of it a moment later.
    const allDone = () => page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 500)));
    await allDone();
    await page.evaluate(() => {
      const { done } = window as unknown as { done: Record<string, number> };
      for (const what of Object.keys(done)) done[what] = 0;
    });
    await page.keyboard.press(key);
    await allDone();
    return page.evaluate(() => (window as unknown as { done: Done }).done);
  }

  test("has only done for a key what the key changes", async () => {
    await workbench.select("H1");
    await workbench.page.keyboard.insertText(formula);
    await doneFor("+");
    const { channels, ...done } = await doneFor("5");
    expect(done).toEqual({ laidOut: 0, made: 0, segmented: 0, textsLaidOut: 10 });
    expect(channels).toBeLessThan(40);
    expect(await doneFor("+")).toMatchObject({ laidOut: 0, made: 0 });
    await doneFor("A");
    // The frame around A5: as it is made, and again with the widths of the headers.
    expect(await doneFor("5")).toMatchObject({ laidOut: 2, made: 1 });
    expect(await doneFor("0")).toMatchObject({ laidOut: 1, made: 0 });
    expect(await doneFor("Backspace")).toMatchObject({ laidOut: 1, made: 0 });
  });

  test("takes cells that are pointed at, on another sheet too", async () => {
    const { page } = workbench;
    const cellInA = (row: number) => workbench.onGrid(80, 20 + (row - 0.5) * USUAL_ROW_HEIGHT);
    await page.keyboard.press("Escape");
    await workbench.select("H2");
    await page.keyboard.insertText(`${formula}+`);
    await page.waitForTimeout(500);
    await page.mouse.click(...(await cellInA(5)));
    await page.waitForTimeout(500);
    await page.keyboard.type("+");
    await tabs().nth(1).click();
    await page.waitForTimeout(500);
    await page.mouse.click(...(await cellInA(4)));
    await page.waitForTimeout(500);
    await page.evaluate(() => delete document.documentElement.dataset.computed);
    await page.keyboard.press("Enter");
    await workbench.computed();
    expect(await value("Sheet1!H2")).toBe("37");
  });
});

describe("a formula that is being written", () => {
  beforeAll(async () => {
    await open("Blank workbook");
    const { page } = workbench;
    await page.getByRole("button", { name: "Add a sheet" }).click();
    await tabs().nth(1).waitFor();
    await tabs().first().click();
    await page.evaluate(() => {
      // biome-ignore lint/suspicious/noExplicitAny: the grid's packages as its page holds them.
      const { gridPackages } = window as any;
      const { prototype } = gridPackages["@univerjs/core"].DocumentDataModel;
      const texts: Record<string, { getPlainText(): string }> = {};
      const { apply } = prototype;
      prototype.apply = function (...given: unknown[]) {
        texts[this.getUnitId()] = this;
        return apply.apply(this, given);
      };
      Object.assign(window, { texts });
    });
  });

  /** What stands in the cell and in the formula bar: once, where it is the same. */
  const written = () =>
    workbench.page.evaluate(() => {
      const { texts } = window as unknown as { texts: Record<string, { getPlainText(): string }> };
      return [...new Set(Object.values(texts).map((text) => text.getPlainText()))].join(" | ");
    });

  async function press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      await workbench.page.keyboard.press(key);
      // The grid takes in what is written a moment later.
      await workbench.page.waitForTimeout(200);
    }
  }

  async function begin(address: string, formula: string): Promise<void> {
    await press("Escape");
    await workbench.select(address);
    await workbench.page.keyboard.type(formula);
    await expect.poll(written).toBe(formula);
  }

  /** By the upper edge of its frame, between its corner and its middle. */
  async function drag(column: number, row: number, down: number): Promise<void> {
    const { mouse } = workbench.page;
    const [x, y] = await workbench.onGrid(
      46 + (column + 0.25) * USUAL_COLUMN_WIDTH,
      20 + (row - 1) * USUAL_ROW_HEIGHT,
    );
    await mouse.move(x, y);
    await mouse.down();
    await mouse.move(x, y + (down * USUAL_ROW_HEIGHT) / 2);
    await mouse.move(x, y + down * USUAL_ROW_HEIGHT + 2);
    await mouse.up();
  }

  test("is the same in its cell and above the grid after F4", async () => {
    const { page } = workbench;
    await begin("E9", "=A3+B3");
    await press("F4");
    await page.keyboard.type("+1");
    await expect.poll(written).toBe("=A3+$B$3+1");
    await press("Escape");
    const bar = await page.locator("[data-u-comp=formula-bar]").boundingBox();
    // A short press, as a tap is.
    await page.mouse.click((bar?.x ?? 0) + 400, (bar?.y ?? 0) + 14);
    await page.waitForTimeout(200);
    await page.keyboard.type("=A3+B3");
    await expect.poll(written).toBe("=A3+B3");
    await press("F4", "F4");
    await page.keyboard.type("+1");
    await expect.poll(written).toBe("=A3+B$3+1");
  });

  test("keeps the $ of its other references where cells are pointed at anew", async () => {
    await begin("E9", "=$A$3*");
    await press("ArrowDown", "ArrowDown");
    await expect.poll(written).toBe("=$A$3*E11");
    await press("Shift+ArrowDown");
    await expect.poll(written).toBe("=$A$3*E11:E12");
    const { mouse } = workbench.page;
    // The last has a frame already.
    for (const row of [6, 3]) {
      // The frames are drawn, and the button is down as long as a hand holds it.
      await workbench.page.waitForTimeout(200);
      const place = await workbench.onGrid(80, 20 + (row - 0.5) * USUAL_ROW_HEIGHT);
      await mouse.click(...place, { delay: 60 });
      await expect.poll(written).toBe(`=$A$3*A${row}`);
    }
  });

  test("changes in the one place whose frame is dragged, wherever the caret stands", async () => {
    await press("Escape");
    await workbench.type("E9", "=Sheet2!$B$4+SUM($D:$D)+$A3+$B$3+C5");
    await workbench.select("E9");
    // The caret comes behind $B$3.
    await press("F2", "ArrowLeft", "ArrowLeft", "ArrowLeft");
    await drag(2, 5, 2);
    await expect.poll(written).toBe("=Sheet2!$B$4+SUM($D:$D)+$A3+$B$3+C7");
    await drag(0, 3, 1);
    await expect.poll(written).toBe("=Sheet2!$B$4+SUM($D:$D)+$A4+$B$3+C7");
    await press("1");
    await expect.poll(written).toBe("=Sheet2!$B$4+SUM($D:$D)+$A4+$B$31+C7");
    await press("Escape");
  });
});
