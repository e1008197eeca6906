import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, inject, test } from "vitest";
import { withFunctionTable } from "../../src/help/function-table";

const root = path.join(import.meta.dirname, "../..");
const read = (name: string) => readFileSync(path.join(root, name), "utf8");

test("the table of functions in README is the one that the declarations give", () => {
  expect(withFunctionTable(read("README.md"), inject("functions").reference)).toBe(
    read("README.md"),
  );
});

test("every script that the documents name exists", () => {
  const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
  for (const file of ["README.md", "DEVELOPERS.md", "templates/README.md"]) {
    for (const [, name = ""] of read(file).matchAll(/npm run ([a-z:-]+)/g)) {
      expect(Object.keys(scripts), `${file} names "npm run ${name}"`).toContain(name);
    }
  }
});
