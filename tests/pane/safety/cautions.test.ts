import { describe, expect, test } from "vitest";
import {
  cautionSheet,
  FIRST_OF_ALL,
  ownCautions,
  SUBJECTS,
  splitTasks,
  tasksNamed,
} from "../../../src/pane/safety/cautions";
import { layOut } from "../../../src/workbook/layout/lay-out";

const subjects = SUBJECTS.flatMap(({ names }) => names);
const textsOf = (name: string) => {
  const [sheet] = layOut(cautionSheet(name)).sheets;
  return Object.values(sheet?.cells ?? {}).map((row) => row[0]?.value);
};

test.each(subjects)("there are cautions for %s, and they name only tasks that exist", (name) => {
  const cautions = ownCautions(name);
  expect(cautions.length).toBeGreaterThan(0);
  expect(cautions).not.toContain(FIRST_OF_ALL);
  for (const caution of cautions) {
    expect(
      splitTasks(caution, name)
        .map(({ text }) => text)
        .join(""),
    ).toBe(caution);
  }
});

describe("the sheet to print", () => {
  test.each(subjects)("for %s closes with what comes first of all", (name) => {
    expect(textsOf(name)[0]).toBe(`Cautions: ${name}`);
    expect(textsOf(name).at(-1)).toBe(FIRST_OF_ALL);
  });

  test("for an additive holds the tasks that its cautions name", () => {
    const texts = textsOf("Native maize starch");
    expect(tasksNamed("Native maize starch")).toContain("Handling powder");
    expect(texts).toContain("Handling powder");
    for (const caution of ownCautions("Handling powder")) expect(texts).toContain(caution);
  });

  test("takes a free name where there is one already", () => {
    const taken = { sheets: new Set(["cautions"]), words: new Set<string>() };
    expect(layOut(cautionSheet("Cooking"), taken).sheets.map(({ name }) => name)).toEqual([
      "Cautions 2",
    ]);
  });
});

test("an unknown subject is refused with the nearest names", () => {
  expect(() => ownCautions("Guar gumm")).toThrow(/nearest names are: Guar gum/);
});
