import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { isPermissive } from "../../src/build/licences";

const root = path.join(import.meta.dirname, "../..");
const json = (name: string) => JSON.parse(readFileSync(path.join(root, name), "utf8"));

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly os?: readonly string[];
  readonly cpu?: readonly string[];
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly resolved?: string;
  readonly integrity?: string;
}

const { dependencies, devDependencies } = json("package.json") as Record<
  "dependencies" | "devDependencies",
  Readonly<Record<string, string>>
>;
const locked = Object.entries(json("package-lock.json").packages as Record<string, Locked>).filter(
  ([place]) => place !== "",
);
const nameOf = (place: string) => place.slice(place.lastIndexOf("node_modules/") + 13);

/** Folders whose code never reaches a page: it builds, or runs in Node from the sources. */
const NOT_IN_PAGES = ["build", "commands"];

function imported(): ReadonlySet<string> {
  const files = readdirSync(path.join(root, "src"), { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll(path.sep, "/"))
    .filter((file) => /\.tsx?$/.test(file) && !NOT_IN_PAGES.includes(file.split("/")[0] as string));
  return new Set(
    files
      .flatMap((file) =>
        ts
          .preProcessFile(readFileSync(path.join(root, "src", file), "utf8"), true, true)
          .importedFiles.map(({ fileName }) => fileName),
      )
      .filter((name) => !name.startsWith(".") && !name.startsWith("node:"))
      .map((name) =>
        name
          .split("/")
          .slice(0, name.startsWith("@") ? 2 : 1)
          .join("/"),
      ),
  );
}

describe("the packages", () => {
  test("are pinned to one version each", () => {
    for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
    }
  });

  test("that reach a page are dependencies, and what only builds is none", () => {
    // Parts of the grid that are not named come with the one package that brings them; types and the compiler are left out of pages.
    const partOf = (name: string) =>
      name.startsWith("@univerjs/") && !(name in dependencies)
        ? "@univerjs/preset-sheets-core"
        : name;
    const used = new Set([...imported()].map(partOf).filter((name) => name !== "typescript"));
    expect(Object.keys(dependencies).sort()).toEqual([...used, "@microsoft/office-js"].sort());
  });

  test.each(
    locked
      .filter(([, { dev }]) => dev !== true)
      .map(([place, one]) => ({ place, name: nameOf(place), ...one })),
  )("$name allows use, change and redistribution", ({ place, name, license }) => {
    // The one exception: its licence allows use with the office suite only; the project does not hold it.
    if (name === "@microsoft/office-js") return;
    const says = license ?? "";
    // Where a package does not say it in a word, its licence file does.
    const file = () => readFileSync(path.join(root, place, "LICENSE"), "utf8");
    expect(isPermissive(says) || /^\s*Apache License\s+Version 2\.0/.test(file()), says).toBe(true);
  });
});

describe("the lock file", () => {
  test("holds what each package needs on every platform, not only on the one that wrote it", () => {
    const places = new Set(locked.map(([place]) => nameOf(place)));
    for (const [place, { optionalDependencies = {} }] of locked) {
      for (const name of Object.keys(optionalDependencies)) {
        expect(places, `${name}, wanted by ${place}`).toContain(name);
      }
    }
  });

  test.each([
    ["win32", "x64"],
    ["win32", "arm64"],
    ["darwin", "x64"],
    ["darwin", "arm64"],
    ["linux", "x64"],
    ["linux", "arm64"],
  ])("has the tools as binaries for %s on %s", (os, cpu) => {
    const found = locked
      .filter(([, one]) => one.os?.includes(os) && one.cpu?.includes(cpu))
      .map(([place]) => nameOf(place));
    expect(found.filter((name) => name.startsWith("@biomejs/cli-")).length).toBeGreaterThan(0);
    expect(found.filter((name) => name.startsWith("@esbuild/")).length).toBeGreaterThan(0);
    expect(found.filter((name) => name.startsWith("@rolldown/binding-")).length).toBeGreaterThan(0);
  });

  test("runs no script of a package when it is installed", () => {
    expect(readFileSync(path.join(root, ".npmrc"), "utf8")).toMatch(/^ignore-scripts=true$/m);
  });

  test("ties nobody to one registry, and has a checksum for everything", () => {
    for (const [place, { resolved, integrity = "" }] of locked) {
      expect(resolved, place).toBeUndefined();
      expect(integrity, place).toMatch(/^sha512-/);
    }
  });
});
