import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openBrowser } from "./shared/shared";

/** The committed icons against the drawing that they come from. */
const folder = path.join(import.meta.dirname, "../../manifest/icons");
const drawing = readFileSync(path.join(folder, "dosewright.svg"), "utf8");

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

test.each([16, 32, 64, 80])("the icon of %i pixels is what the drawing gives", async (size) => {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const picture = (type: string, bytes: Buffer | string) =>
    `data:image/${type};base64,${Buffer.from(bytes).toString("base64")}`;
  const sources = [
    picture("png", readFileSync(path.join(folder, `dosewright-${size}.png`))),
    picture("svg+xml", drawing.replace("<svg ", `<svg width="${size}" height="${size}" `)),
  ];
  const [committed, drawn] = await page.evaluate(
    async ({ sources, size }) =>
      Promise.all(
        sources.map(async (source) => {
          const image = Object.assign(new Image(), { src: source });
          await image.decode();
          const canvas = Object.assign(document.createElement("canvas"), {
            width: size,
            height: size,
          });
          const pen = canvas.getContext("2d") as CanvasRenderingContext2D;
          pen.drawImage(image, 0, 0);
          return [...pen.getImageData(0, 0, size, size).data];
        }),
      ),
    { sources, size },
  );
  const differences = (committed as number[]).map((value, i) =>
    Math.abs(value - (drawn?.[i] as number)),
  );
  // Two versions of a browser smooth edges a little differently; another drawing is far away.
  const mean = differences.reduce((sum, one) => sum + one, 0) / differences.length;
  expect(mean).toBeLessThan(0.4);
  expect(new Set(committed).size).toBeGreaterThan(10);
  await page.close();
});
