import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import type { Module } from "webpack";
import { isPermissive, shippedPackages } from "../../src/build/licences";

describe("a licence", () => {
  test.each([
    "MIT",
    "ISC",
    "Apache-2.0",
    "BSD-3-Clause",
    "(MIT OR GPL-3.0)",
    "MIT AND ISC",
    "0BSD",
  ])("%s is permissive", (licence) => {
    expect(isPermissive(licence)).toBe(true);
  });
  test.each([
    "GPL-3.0",
    "AGPL-3.0-only",
    "SEE LICENSE IN LICENSE.md",
    "none",
    "MIT AND GPL-3.0",
    "UNLICENSED",
    "",
  ])("%s is not", (licence) => {
    expect(isPermissive(licence)).toBe(false);
  });
});

describe("the packages that ship", () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "licences-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const place = (name: string, about: object, text?: string) => {
    const home = path.join(folder, "node_modules", name);
    mkdirSync(home, { recursive: true });
    writeFileSync(
      path.join(home, "package.json"),
      JSON.stringify({ name, version: "1.0.0", ...about }),
    );
    if (text !== undefined) writeFileSync(path.join(home, "LICENSE"), text);
    return (file: string) => ({ resource: path.join(home, file) });
  };
  const plain = place("plain", { license: "MIT" }, "Copyright one");
  const scoped = place("@some/part", { license: "ISC" }, "Copyright two");
  const inner = place("plain/node_modules/inner", { name: "inner", license: "GPL-3.0" });

  test("are found from the modules, once each, also inside joined ones and inside others", () => {
    const modules = [
      plain("index.js"),
      plain("deep/other.js"),
      { modules: [scoped("lib/index.js"), inner("index.js")] },
      { resource: path.join(folder, "src/own.ts") },
      {},
    ] as unknown as Module[];
    expect(shippedPackages(modules)).toEqual([
      { name: "@some/part", version: "1.0.0", licence: "ISC", text: "Copyright two" },
      { name: "inner", version: "1.0.0", licence: "GPL-3.0", text: "" },
      { name: "plain", version: "1.0.0", licence: "MIT", text: "Copyright one" },
    ]);
  });
});
