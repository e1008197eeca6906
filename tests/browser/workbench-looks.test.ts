/** How the grid's own parts look on a dark page: the formula that is typed, the menus, the dialogs. */
import { beforeAll, expect, test } from "vitest";
import { seriousFindings } from "./axe";
import { serveWorkbench } from "./served-workbench";
import type { WorkbenchPage } from "./workbench";

const served = serveWorkbench();
let workbench: WorkbenchPage;

beforeAll(async () => {
  workbench = await served.open({ colorScheme: "dark" });
  await workbench.openTemplate("Blank workbook");
});

/** The colours of the lines of the page that lie in the formula bar, beside its text: each line once. */
async function barColours(): Promise<{ lines: string[]; around: string }> {
  const { page } = workbench;
  const canvas = await page.locator('[data-u-comp="formula-bar"] canvas').boundingBox();
  if (!canvas) throw new Error("There is no formula bar.");
  const shot = (await page.screenshot()).toString("base64");
  return page.evaluate(
    async ([data, { x, y, width, height }]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const drawn = new OffscreenCanvas(image.width, image.height).getContext("2d");
      if (!drawn) throw new Error("Nothing can be drawn.");
      drawn.drawImage(image, 0, 0);
      const colour = (left: number, top: number) => drawn.getImageData(left, top, 1, 1).data.join();
      const lines = Array.from({ length: Math.floor(height) }, (_, line) => {
        const across = Array.from({ length: Math.floor(width) - 1 }, (_, at) =>
          colour(x + at, Math.ceil(y) + line),
        );
        return [...new Set(across)].join(" ");
      });
      return { lines, around: colour(x - 4, y + height / 2) };
    },
    [shot, canvas] as const,
  );
}

test("the formula bar shows a whole line of text, on one ground", async () => {
  await workbench.type("A1", "(gypsum)");
  await workbench.select("A1");
  const { lines, around } = await barColours();
  expect(lines.some((line) => line !== around)).toBe(true);
  expect([lines.at(0), lines.at(-1)]).toEqual([around, around]);
});

test("completion and the help on arguments can be read, and mark the argument by its weight", async () => {
  const { page } = workbench;
  await workbench.select("B3");
  await page.keyboard.type("=WETEND.DOSE.T");
  await page.getByText("WETEND.DOSE.THROUGHPUT").waitFor();
  expect(await seriousFindings(page)).toEqual([]);
  await page.keyboard.type("ARGET(6.5,");
  const argument = page.getByText("overallRetention", { exact: true }).first();
  await argument.waitFor();
  expect(await argument.evaluate((element) => getComputedStyle(element).fontWeight)).toBe("600");
  expect(await seriousFindings(page)).toEqual([]);
});

/** What cannot be read well, once everything has come to its place. */
async function faint(): Promise<readonly string[]> {
  const { page } = workbench;
  await page.waitForFunction(() =>
    document.getAnimations().every(({ playState }) => playState !== "running"),
  );
  const findings = await seriousFindings(page);
  return findings.filter((finding) => finding.startsWith("color-contrast"));
}

test("the list of sheets, the names and a question can be read", async () => {
  const { page } = workbench;
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await workbench.openTemplate("Dose and effluent");
  await page.getByRole("button", { name: "All sheets" }).click();
  await page.getByRole("menuitem", { name: "Where it goes" }).waitFor();
  expect(await faint()).toEqual([]);
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Names in this workbook" }).click();
  await page.getByText("Dose!$B$5").waitFor();
  expect(await faint()).toEqual([]);
  await page.keyboard.press("Escape");
  await page.getByRole("tab", { name: "Log", exact: true }).click({ button: "right" });
  await page.getByText("Delete", { exact: true }).click();
  await page.getByRole("dialog").getByText("This cannot be undone").waitFor();
  expect(await faint()).toEqual([]);
  await page.getByRole("button", { name: "Cancel" }).click();
});

test.each([320, 730, 768, 1600])(
  "a menu of the header lies on a page of %i pixels",
  async (width) => {
    const { page } = workbench;
    await page.setViewportSize({ width, height: 700 });
    const across = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(across).toBeLessThanOrEqual(width);
    for (const id of ["#templates", "#sort", "#format", "#comment"]) {
      await page.locator(`${id} summary`).click();
      const list = await page.locator(`${id} > :is(ul, .panel)`).boundingBox();
      expect(list?.x).toBeGreaterThanOrEqual(0);
      expect((list?.x ?? 0) + (list?.width ?? 0)).toBeLessThanOrEqual(width);
      await page.locator(`${id} summary`).click();
    }
  },
);
