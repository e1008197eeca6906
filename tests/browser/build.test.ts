import { realpathSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { headersFor } from "../../src/build/headers";
import { manifestFaults } from "../../src/build/manifest/check-manifest";
import { type Served, serveFiles } from "./serve-files";
import { openBrowser, shared } from "./shared/shared";
import { filesIn, ORIGIN, wholeBuild } from "./whole-build";

/** The folder that a build writes: what it holds, and that any static server can serve it. */
const files = filesIn(await shared("built"));
const text = (name: string) => String(files[name]);
const ours = Object.keys(files).filter((name) => !name.startsWith("office/"));

test("two builds are the same, byte for byte", async () => {
  const again = await wholeBuild();
  expect(Object.keys(again).sort()).toEqual(Object.keys(files).sort());
  for (const name of Object.keys(files)) {
    expect(again[name]?.equals(files[name] as Buffer), name).toBe(true);
  }
});

describe("the folder", () => {
  test("serves every address that the manifest and the functions name", () => {
    const addresses = [
      ...text("manifest.xml").matchAll(/DefaultValue="(https:[^"]*)"/g),
      ...text("functions.json").matchAll(/"helpUrl": "([^"]*)"/g),
    ].map(([, url]) => url as string);
    expect(addresses.length).toBeGreaterThan(60);
    for (const url of addresses) {
      expect(url.startsWith(`${ORIGIN}/`), url).toBe(true);
      expect(Object.keys(files)).toContain(url.slice(ORIGIN.length + 1));
    }
    expect(
      manifestFaults(text("manifest.xml"), (url) => files[url.slice(ORIGIN.length + 1)]),
    ).toEqual([]);
  });

  test("loads scripts and styles from itself only, by addresses that are relative", () => {
    for (const page of ours.filter((name) => name.endsWith(".html"))) {
      const loaded = [...text(page).matchAll(/<(?:script|link|img)[^>]*?(?:src|href)="([^"]*)"/g)];
      for (const [, url] of loaded) expect(url, page).toMatch(/^(?!\w+:|\/)/);
    }
  });

  test("says nothing of the machine that built it", () => {
    const root = path.resolve(import.meta.dirname, "../..");
    const packages = path.dirname(realpathSync(path.join(root, "node_modules")));
    const places = [root, packages, os.tmpdir(), os.userInfo().homedir].map((place) => `${place}/`);
    for (const name of ours) {
      for (const place of places)
        expect(text(name).includes(place), `${name}: ${place}`).toBe(false);
    }
  });

  test("asks no other machine for anything", () => {
    for (const name of ours.filter((one) => /\.js$/.test(one))) {
      const calls = [
        ...text(name).matchAll(
          /(?:fetch|import|WebSocket|EventSource|sendBeacon)\(["'`]https?:[^"'`]*/g,
        ),
      ];
      expect(
        calls.map(([call]) => call),
        name,
      ).toEqual([]);
    }
  });

  test("makes no code from text", () => {
    for (const name of ours.filter((one) => /\.js$/.test(one))) {
      expect(/\beval\(|new Function\(/.test(text(name)), name).toBe(false);
    }
  });

  test("holds the headers and the licences, each package with its notice", () => {
    expect(text("headers.txt")).toContain("Content-Security-Policy");
    const listed = [...text("licences.txt").matchAll(/^ {2}(\S+) \S+ \((\S+)\)$/gm)].map(
      ([, name]) => name,
    );
    expect(listed).toEqual(
      expect.arrayContaining(["react", "@zip.js/zip.js", "@observablehq/plot"]),
    );
    expect(text("licences.txt")).toContain("MICROSOFT SOFTWARE LICENSE TERMS");
  });

  test("gives its later scripts names that change with what is in them", () => {
    for (const name of ours.filter((one) => one.startsWith("assets/"))) {
      expect(name).toMatch(/^assets\/[\w-]+\.[0-9a-f]{12}\.js(\.map)?$/);
    }
  });
});

describe("from a folder below the root of a server", () => {
  let browser: Browser;
  let served: Served;
  beforeAll(async () => {
    const below = Object.entries(files).map(([name, bytes]) => [`mill/dosewright/${name}`, bytes]);
    served = await serveFiles(Object.fromEntries(below), (name) =>
      headersFor(name.replace(/^\/mill\/dosewright/, "")),
    );
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });

  test.each(["taskpane.html", "pane.html"])("%s finds all of its files", async (name) => {
    const page: Page = await browser.newPage();
    const failed: string[] = [];
    page.on("response", (answer) => {
      if (answer.status() >= 400) failed.push(answer.url());
    });
    await page.goto(`${served.origin}/mill/dosewright/${name}`);
    for (const tab of ["Safety", "Functions", "Templates", "Working", "Additives"]) {
      await page.getByRole("tab", { name: tab }).click();
    }
    expect(failed).toEqual([]);
    await page.close();
  });
});
