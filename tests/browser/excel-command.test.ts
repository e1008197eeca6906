import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { manifestFaults } from "../../src/build/manifest/check-manifest";
import { DEVELOPMENT_ORIGIN } from "../../src/build/manifest/manifest";
import { isFree } from "../commands/ports";
import { openBrowser } from "./shared/shared";

/** `npm run excel`, as a person runs it. */
const root = path.join(import.meta.dirname, "../..");
const port = Number(new URL(DEVELOPMENT_ORIGIN).port);

interface Run {
  readonly printed: () => string;
  readonly said: (words: string) => Promise<void>;
  readonly ended: Promise<number | null>;
  interrupt(): void;
}

function run(): Run {
  const command = path.join(root, "src/commands/excel.ts");
  const child = spawn(process.execPath, ["--import", "tsx", command], { cwd: root });
  let printed = "";
  const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
  const said = (words: string) =>
    new Promise<void>((resolve, reject) => {
      const look = () => printed.includes(words) && resolve();
      for (const stream of [child.stdout, child.stderr]) {
        stream.on("data", (text) => {
          printed += text;
          look();
        });
      }
      void ended.then((code) => reject(new Error(`it ended with ${code}: ${printed}`)));
    });
  return { printed: () => printed, said, ended, interrupt: () => void child.kill("SIGINT") };
}

let browser: Browser;
let excel: Run;
beforeAll(async () => {
  browser = await openBrowser();
  excel = run();
  await excel.said("Try it:");
});
afterAll(async () => {
  excel?.interrupt();
  await browser?.close();
});

test("serves the page, the functions and their help over HTTPS", async () => {
  const context = await browser.newContext({ ignoreHTTPSErrors: true });
  const page = await context.newPage();
  await page.goto(`${DEVELOPMENT_ORIGIN}/taskpane.html`);
  await page.getByRole("tab", { name: "Working" }).waitFor();
  for (const name of ["functions.json", "help/dose.pump.html", "icons/dosewright-32.png"]) {
    expect((await context.request.get(`${DEVELOPMENT_ORIGIN}/${name}`)).status(), name).toBe(200);
  }
  const evil = await context.request.get(`${DEVELOPMENT_ORIGIN}/functions.json`, {
    headers: { host: "evil.example" },
  });
  expect(evil.status()).toBe(403);
  await context.close();
});

test("writes a sound manifest of development and says where it lies", async () => {
  const [, file] = /^Manifest: (.*)$/m.exec(excel.printed()) ?? [];
  const icon = (url: string) => {
    const name = url.split("/icons/")[1];
    return name === undefined ? undefined : readFileSync(path.join(root, "manifest/icons", name));
  };
  expect(manifestFaults(readFileSync(file as string, "utf8"), icon)).toEqual([]);
});

test("says that the port is taken when it runs already, and ends", async () => {
  const second = run();
  second.said(`Port ${port} is taken`).catch(() => undefined);
  expect(await second.ended).toBe(1);
  expect(second.printed()).toContain(`Port ${port} is taken`);
});

test("ends at Ctrl-C and leaves the port free", async () => {
  excel.interrupt();
  expect(await excel.ended).toBe(0);
  expect(await isFree(port)).toBe(true);
});
