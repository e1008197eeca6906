import { expect, test } from "vitest";
import { ownWords } from "../../../src/workbench/grid/own-words";

/** Every text of the grid, with the way to it. */
function texts(words: unknown, way = ""): [string, string][] {
  if (typeof words === "string") return [[way, words]];
  return Object.entries(words ?? {}).flatMap(([key, inner]) => texts(inner, `${way}/${key}`));
}

test("no text of the grid calls it by its name", () => {
  const all = texts(ownWords());
  expect(all.length).toBeGreaterThan(1000);
  expect(all.filter(([, text]) => /\bunivers?\b|dreamnum/i.test(text))).toEqual([]);
});

test("the button below the names says what it opens", () => {
  expect(ownWords()["sheets-ui"].definedName.managerTitle).toBe("All names");
});
