import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { seriousFindings } from "./axe";
import { type Served, serveFiles } from "./serve-files";
import { openBrowser } from "./shared/shared";

const { help } = inject("functions");
let browser: Browser;
let served: Served;
beforeAll(async () => {
  browser = await openBrowser();
  served = await serveFiles(help);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const LOOKS = {
  light: { colorScheme: "light" },
  dark: { colorScheme: "dark" },
  "high contrast": { forcedColors: "active" },
  narrow: { viewport: { width: 320, height: 700 } },
} as const;

/** An equation that is wide, a table that is wide, a choice, an answer with words, and the list of all. */
const PAGES = ["partition.ordered", "strength.fit", "dose.convert", "effluent.treatment", "index"];

test.each(Object.keys(LOOKS) as (keyof typeof LOOKS)[])(
  "%s: pages of help have no serious finding, and nothing wider than the window",
  async (look) => {
    const context = await browser.newContext(LOOKS[look]);
    const page = await context.newPage();
    for (const name of PAGES) {
      const answer = await page.goto(`${served.origin}/${name}.html`);
      expect(answer?.status(), name).toBe(200);
      expect(await seriousFindings(page), name).toEqual([]);
      const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      if (look === "dark") expect(paper).toBe("rgb(21, 25, 28)");
      const [content = 0, room = 0] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        window.innerWidth,
      ]);
      expect(content, name).toBeLessThanOrEqual(room);
    }
    await context.close();
  },
);

test("a page of help works without scripts", async () => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${served.origin}/dose.pump.html`);
  await page.getByRole("heading", { name: "WETEND.DOSE.PUMP" }).waitFor();
  await page.getByRole("link", { name: "DOSE.TARGET" }).click();
  await page.getByRole("heading", { name: "WETEND.DOSE.TARGET" }).waitFor();
  await context.close();
});
