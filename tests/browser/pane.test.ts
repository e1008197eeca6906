import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { seriousFindings } from "./axe";
import {
  computeCell,
  deedsOf,
  LOOKS,
  type Name,
  OpenedPane,
  openTab,
  say,
  wear,
  widerThan,
} from "./pane/open-pane";
import type { TestPage } from "./pane/page";

let pane: OpenedPane;
let page: Page;
beforeAll(async () => {
  pane = await OpenedPane.start();
});
afterAll(() => pane?.stop());
afterEach(({ task }) => {
  expect(pane.takeFaults(task.result?.state === "fail")).toEqual([]);
});

const TABS: readonly Name[] = ["Additives", "Safety", "Functions", "Templates", "Working"];

/** A state that each part can be brought into, furthest from how it opens. */
const STATES: Readonly<Record<string, () => Promise<void>>> = {
  "Additives, the list": async () => {},
  "Additives, one of them": () =>
    page.getByRole("button", { name: "Guar gum", exact: true }).click(),
  "Additives, a comparison": async () => {
    const back = page.getByRole("button", { name: "All additives" });
    if (await back.isVisible()) await back.click();
    for (const name of ["Native maize starch", "Guar gum", "Anionic polyacrylamide"]) {
      await page.getByRole("checkbox", { name: `Compare ${name}` }).check();
    }
    await page.getByRole("button", { name: "Compare", exact: true }).click();
  },
  Safety: () => openTab(page, "Safety"),
  "Functions, the list": () => openTab(page, "Functions"),
  "Functions, one with its form": async () => {
    await openTab(page, "Functions");
    await page.getByRole("button", { name: /^DOSE\.CONVERT/ }).click();
    await page.getByRole("button", { name: "Write into a cell…" }).click();
    await page.getByRole("button", { name: "Write the formula" }).click();
  },
  Templates: async () => {
    await openTab(page, "Templates");
    await page.locator("summary").first().click();
  },
  "Working, a number": async () => {
    await openTab(page, "Working");
    await computeBalance();
    await page.getByRole("img", { name: /^Of 10 kg\/t dosed/ }).waitFor();
  },
  "Working, a failed cell": async () => {
    await openTab(page, "Working");
    await computeCell(page, "Dose!C7", "=WETEND.DOSE.TARGET(B2,B3)", "DOSE.TARGET", 6.5, 82);
    await page.getByText("Give a fraction above 0").waitFor();
    await page.getByRole("button", { name: "Check this workbook" }).click();
  },
};

const computeBalance = () =>
  computeCell(
    page,
    "Dose!C7",
    "=WETEND.RETENTION.BALANCE(B2,B3,B4,B5)",
    "RETENTION.BALANCE",
    10,
    0.15,
    0.95,
    0.5,
  );

type Found = Readonly<Record<string, readonly string[]>>;

let walked: Promise<ReadonlyMap<string, Found>> | undefined;

/** What is found in every state by the name of the look: each state is reached once, where it is tightest. */
async function walk(): Promise<ReadonlyMap<string, Found>> {
  const found = new Map<string, Record<string, readonly string[]>>();
  page = await pane.page(LOOKS.enlarged);
  for (const [state, reach] of Object.entries(STATES)) {
    await wear(page, LOOKS.enlarged);
    await reach();
    for (const [name, look] of Object.entries(LOOKS)) {
      await wear(page, look);
      const here = [...(await seriousFindings(page)), ...(await widerThan(page))];
      found.set(name, { ...found.get(name), [state]: here });
    }
  }
  return found;
}

test.each(Object.keys(LOOKS))(
  "%s: no serious finding in any state, and nothing wider than the pane",
  async (look) => {
    walked ??= walk();
    const found = (await walked).get(look);
    expect(found).toEqual(Object.fromEntries(Object.keys(STATES).map((state) => [state, []])));
  },
);

test("all five parts are there by name, also in the narrowest pane, side by side", async () => {
  page = await pane.page(LOOKS.narrow);
  const tops = await page
    .getByRole("tab")
    .evaluateAll((tabs) => tabs.map((tab) => [tab.textContent, tab.getBoundingClientRect().top]));
  expect(await page.getByRole("tab").count()).toBe(TABS.length);
  for (const name of TABS)
    expect(await page.getByRole("tab", { name, exact: true }).count()).toBe(1);
  expect(new Set(tops.map(([, top]) => top)).size).toBe(1);
});

test("every part is reached by keyboard alone, and says that it is the one shown", async () => {
  page = await pane.page();
  await page.keyboard.press("Tab");
  for (const name of TABS) {
    await page.keyboard.press("Enter");
    const tab = page.getByRole("tab", { name });
    expect(await tab.getAttribute("aria-selected")).toBe("true");
    expect(await page.getByRole("tabpanel", { name }).isVisible()).toBe(true);
    await page.keyboard.press("ArrowRight");
  }
});

test("who wants less motion gets none", async () => {
  page = await pane.page({ ...LOOKS.light, reducedMotion: "reduce" });
  const longest = await page.evaluate(() =>
    Math.max(
      ...[...document.querySelectorAll("#pane *")].flatMap((element) => {
        const { animationDuration, transitionDuration } = getComputedStyle(element);
        return `${animationDuration},${transitionDuration}`.split(",").map(Number.parseFloat);
      }),
    ),
  );
  expect(longest).toBeLessThan(0.001);
});

test("the host's theme goes before the system's", async () => {
  page = await pane.page(LOOKS.light, { theme: "dark" });
  const dark = await page
    .locator(".fui-FluentProvider")
    .evaluate((element) => getComputedStyle(element).backgroundColor);
  expect(dark).toBe("rgb(21, 25, 28)");
});

describe("Additives", () => {
  test("finds by search and kind, and shows each number with unit, range, evidence and source", async () => {
    page = await pane.page();
    await page.getByRole("searchbox").fill("potato");
    await page.getByRole("button", { name: "Native potato starch" }).click();
    const cod = page.getByRole("listitem").filter({ hasText: "COD factor" });
    for (const text of ["1.1 g/g", "1 to 1.18 g/g", "typical, from memory", "measure your own"]) {
      expect(await cod.textContent()).toContain(text);
    }
    await page.getByRole("button", { name: "All additives" }).click();
    const left = page.getByRole("button", { name: "Native potato starch" });
    expect(await left.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.getByRole("searchbox").fill("");
    await page.getByLabel("Kind").selectOption("filler");
    expect(await page.getByRole("checkbox").count()).toBe(5);
  });

  test("puts a value as a look-up, and a whole row with its units, where the selection is", async () => {
    page = await pane.page();
    await page.getByRole("button", { name: "Guar gum", exact: true }).click();
    await page.getByRole("button", { name: "Put the COD factor of Guar gum" }).click();
    await page
      .getByText('Sheet1!A1 now holds =WETEND.LIBRARY.ADDITIVE("Guar gum","COD factor").')
      .waitFor();
    await page.getByRole("button", { name: "Put the row into the sheet" }).click();
    await page.getByText("now holds Guar gum, with a header").waitFor();
    const [value, row] = await deedsOf(page);
    expect(value?.given).toEqual([
      "Sheet1!A1",
      '=WETEND.LIBRARY.ADDITIVE("Guar gum","COD factor")',
    ]);
    expect(row).toMatchObject({
      what: "insertValues",
      given: ["Sheet1!A1", [["Additive"], ["Guar gum"]].map((one) => expect.arrayContaining(one))],
    });
  });

  test("starts a table of your own, whose entries then show in the list", async () => {
    page = await pane.page(LOOKS.wide);
    await page.getByRole("button", { name: "Guar gum", exact: true }).click();
    await page.getByRole("button", { name: "Start a table of your own" }).click();
    await page.getByText("is now a table of your own").waitFor();
    await page.getByRole("button", { name: "Guar gum own, from ownAdditives" }).waitFor();
    expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["insertTable"]);
  });
});

describe("Safety", () => {
  test("always closes with what comes first of all", async () => {
    page = await pane.page();
    await openTab(page, "Safety");
    const subjects = await page.getByLabel("Task or additive").locator("option").allInnerTexts();
    expect(subjects.length).toBeGreaterThan(30);
    for (const subject of ["Cooking", "Guar gum", "Kaolin"]) {
      await page.getByLabel("Task or additive").selectOption(subject);
      const text = await page.getByRole("tabpanel", { name: "Safety" }).textContent();
      expect(text).toMatch(/come first, and licensed people do licensed work\.Put on a sheet/);
    }
  });

  test("leads from an additive to the task that its caution names, and puts both on a sheet", async () => {
    page = await pane.page();
    await page.getByRole("button", { name: "Guar gum", exact: true }).click();
    await page.getByRole("button", { name: "Cautions for Guar gum" }).click();
    await page.getByRole("button", { name: "Put on a sheet to print" }).click();
    await page.getByText("on the new sheet Cautions").waitFor();
    expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["addSheets"]);
    await page.getByRole("button", { name: "Handling powder" }).first().click();
    await page.getByRole("heading", { name: "Handling powder" }).waitFor();
  });
});

describe("Functions", () => {
  test("are found by words of the trade, and lead to one another", async () => {
    page = await pane.page();
    await openTab(page, "Functions");
    await page.getByRole("searchbox").fill("how much to add");
    await page.getByRole("button", { name: /^DOSE\.TARGET/ }).click();
    await page.getByRole("heading", { name: "WETEND.DOSE.TARGET" }).waitFor();
    expect(await page.locator("math").first().textContent()).toContain("retained");
    await page.getByRole("button", { name: "DOSE.SURFACELIMIT" }).click();
    await page.getByRole("heading", { name: "WETEND.DOSE.SURFACELIMIT" }).waitFor();
  });

  const writePump = async () => {
    await openTab(page, "Functions");
    await page.getByRole("button", { name: /^DOSE\.PUMP/ }).click();
    await page.getByRole("button", { name: "Write into a cell…" }).click();
    await page.evaluate(() =>
      (window as unknown as { page: TestPage }).page.sheet.select("Log!B4:B9"),
    );
    await page.getByRole("button", { name: "Take selection for dose" }).click();
    await page.getByRole("textbox", { name: "throughput" }).fill("9.3");
    await page.getByRole("textbox", { name: "strength" }).fill("3%");
    await page.evaluate(() =>
      (window as unknown as { page: TestPage }).page.sheet.select("Log!D4"),
    );
    await page.getByRole("button", { name: "Write the formula" }).click();
  };

  test("write one complete formula into the selected cell", async () => {
    page = await pane.page();
    await writePump();
    await page.getByText("Log!D4 now holds").waitFor();
    expect((await deedsOf(page)).map(({ given }) => given)).toEqual([
      ["Log!D4", "=WETEND.DOSE.PUMP(Log!B4:B9,9.3,3%)"],
    ]);
  });

  test("ask before a cell is replaced that holds something, and show what it holds", async () => {
    page = await pane.page();
    await page.evaluate(() =>
      (window as unknown as { page: TestPage }).page.sheet.put("Log!D4", "=A1", 12),
    );
    await writePump();
    await page.getByText("Log!D4 holds =A1.").waitFor();
    expect(await deedsOf(page)).toEqual([]);
    await page.getByRole("button", { name: "Replace Log!D4" }).click();
    await page.getByText("It held =A1 before.").waitFor();
    expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["insertFormula"]);
  });

  test("say by argument what is missing, and write nothing", async () => {
    page = await pane.page();
    await openTab(page, "Functions");
    await page.getByRole("button", { name: /^DOSE\.PUMP/ }).click();
    await page.getByRole("button", { name: "Write into a cell…" }).click();
    const form = page.getByRole("form", { name: "Write DOSE.PUMP into a cell" });
    expect((await form.textContent())?.match(/\[t\/h\]/g), "each unit once").toEqual(["[t/h]"]);
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByText("Give a cell, a range or a value [kg/t].").waitFor();
    expect(await page.getByRole("textbox", { name: "dose" }).getAttribute("aria-invalid")).toBe(
      "true",
    );
    expect(await deedsOf(page)).toEqual([]);
  });
});

test("Templates say their question, come as new sheets, and say what was done", async () => {
  page = await pane.page();
  await openTab(page, "Templates");
  await page.getByRole("heading", { name: /what leaves with the water\?/ }).waitFor();
  await page.getByRole("button", { name: "Add to the workbook: Dose and effluent" }).click();
  await page.getByText("Nothing else was changed.").waitFor();
  expect(await say(page)).toContain("One undo takes them away again.");
  expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["addSheets"]);
  await openTab(page, "Safety");
  await page.getByText("Nothing else was changed.").waitFor({ state: "detached" });
});

describe("Working", () => {
  test("tells a cell's number step by step, with its picture in words", async () => {
    page = await pane.page();
    await openTab(page, "Working");
    await computeBalance();
    const panel = page.getByRole("tabpanel", { name: "Working" });
    await page.getByRole("img", { name: /2\.52 kg\/t stay in the sheet/ }).waitFor();
    const text = await panel.textContent();
    expect(text).toContain("=WETEND.RETENTION.BALANCE(B2,B3,B4,B5)");
    expect(text).toMatch(/degraded.*= 6\.77149 kg\/t/s);
    expect(text).toContain("from B3");
    expect(text).toContain("Holds for");
  });

  test("follows the selection, steps through the rows of an answer, and says where each number came from", async () => {
    page = await pane.page();
    await openTab(page, "Working");
    await page.getByText("Select a cell that holds a Dosewright function").waitFor();
    await computeCell(
      page,
      "Log!D4",
      "=WETEND.DOSE.PUMP(B4:B6,9.3,3%)",
      "DOSE.PUMP",
      [[4], [8], [-1]],
      9.3,
      0.03,
      null,
    );
    await page.getByText("from B4").waitFor();
    await page.getByRole("button", { name: "The row after" }).click();
    await page.getByText("from B5").waitFor();
    expect(await page.getByText("2480 L/h").count()).toBe(2);
    await page.getByRole("button", { name: "The row after" }).click();
    await page.getByText("dose is -1.").waitFor();
    expect(await page.getByRole("button", { name: "The row after" }).isDisabled()).toBe(true);
  });

  test("explains a failed cell in full, lists what fails, and jumps to it", async () => {
    page = await pane.page();
    await openTab(page, "Working");
    await computeCell(page, "Dose!C7", "=WETEND.DOSE.TARGET(B2,B3)", "DOSE.TARGET", 6.5, 82);
    await page.getByText("overallRetention is 82.").waitFor();
    await page.evaluate(() => {
      const { failures } = (window as unknown as { page: TestPage }).page.sheet;
      const formula = "=WETEND.DOSE.TARGET(B2,B3)";
      failures.push(
        { address: "Dose!C7", formula, value: "#VALUE!", error: "#VALUE!", lostLink: false },
        { address: "Log!D9", formula, value: "#NAME?", error: "#NAME?", lostLink: true },
      );
    });
    await page.getByRole("button", { name: "Check this workbook" }).click();
    const failed = page.getByRole("list", { name: "Cells that fail" });
    expect(await failed.textContent()).toContain("Give a fraction above 0, up to 1");
    await failed.getByRole("button", { name: "Log!D9" }).click();
    await page.getByRole("heading", { name: "Log!D9" }).waitFor();
    await page.getByRole("button", { name: "Repair 1 lost link" }).click();
    await page.getByText("1 cell repaired.").waitFor();
    expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["relink"]);
  });

  test("opens the copy with values only", async () => {
    page = await pane.page();
    await openTab(page, "Working");
    await page.getByRole("button", { name: "Copy with values only" }).click();
    await page.getByText("This workbook is as it was.").waitFor();
    expect((await deedsOf(page)).map(({ what }) => what)).toEqual(["openValuesCopy"]);
  });
});

test("outside any sheet the pane shows what it can, and says what needs a sheet", async () => {
  page = await pane.page(LOOKS.light, { alone: true });
  await page.getByRole("button", { name: "Guar gum", exact: true }).click();
  await page.getByText("There is no sheet here.").first().waitFor();
  expect(await page.getByText("1.1 g/g").count()).toBeGreaterThan(0);
  for (const name of TABS) {
    await openTab(page, name);
    const panel = page.getByRole("tabpanel", { name });
    expect(await panel.textContent()).toMatch(
      name === "Functions" ? /DOSE\.PUMP/ : /There is no sheet here/,
    );
    expect(await seriousFindings(page)).toEqual([]);
  }
  await openTab(page, "Functions");
  await page.getByRole("button", { name: /^DOSE\.PUMP/ }).click();
  await page.getByText("in the workbench to write this function into a cell.").waitFor();
});
