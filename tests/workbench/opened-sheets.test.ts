import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, inject, test } from "vitest";
import { openedSheets } from "../../src/workbench/opened-sheets";
import { functionNames } from "../../src/workbook/formula/stored-form";
import { layOut } from "../../src/workbook/layout/lay-out";
import { readWorkbook } from "../../src/workbook/read/read-workbook";
import type { ConditionalFormat, EntryRule } from "../../src/workbook/sheet-rules";
import { ruleFormula } from "../../src/workbook/write/validation-xml";
import { plans } from "../../templates/plans";

const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));

describe("a template's file that is opened", () => {
  test.each(plans)("$id has the rules of its plan", async (plan) => {
    const file = path.join(import.meta.dirname, `../../templates/${plan.id}.xlsx`);
    const { book } = await readWorkbook(new Uint8Array(readFileSync(file)), names);
    const opened = openedSheets(book, []).sheets;
    const planned = layOut(plan).sheets;
    for (const [index, { rules, validations }] of planned.entries()) {
      const said = opened[index]?.rules.map((rule) => [rule.area, ruleFormula(rule), rule.look]);
      expect(said).toEqual(rules.map((rule) => [rule.area, ruleFormula(rule), rule.look]));
      const asked = opened[index]?.validations.map(({ area, type, refusal, prompt }) => [
        area,
        type,
        refusal,
        prompt?.text,
      ]);
      expect(asked).toEqual(
        validations.map(({ area, type, refusal, prompt }) => [area, type, refusal, prompt?.text]),
      );
    }
  });
});

const area = { row: 1, column: 1, rows: 3, columns: 1 };
const sheetWith = (more: { entryRules?: EntryRule[]; formats?: ConditionalFormat[] }) =>
  openedSheets(
    { sheets: [{ name: "Log", cells: {}, ...more }], definedNames: [], tables: [], styles: {} },
    [],
  ).sheets[0];

describe("a rule of another program", () => {
  test.each([
    ["from 1 to 9", { comparison: "between", from: "1", to: "9" }, { from: "1", to: "9" }],
    ["of 1 or more", { comparison: "greaterThanOrEqual", from: "1" }, { from: "1" }],
    ["of 9 or less", { comparison: "lessThanOrEqual", from: "9" }, { to: "9" }],
  ] as const)("that asks for a number %s is taken", (_, test, bounds) => {
    const entryRules: EntryRule[] = [
      { area, type: "decimal", blank: true, refusal: "No.", ...test },
    ];
    expect(sheetWith({ entryRules })?.validations).toEqual([
      { area, type: "decimal", refusal: "No.", ...bounds },
    ]);
  });

  test.each([
    [
      "asks for a number other than 3",
      { type: "decimal", comparison: "notEqual", from: "3", refusal: "No." },
    ],
    ["only helps", { type: "any", prompt: "kg/t" }],
    ["warns and takes all", { type: "decimal", comparison: "between", from: "1", to: "2" }],
  ] as const)("that %s is left out", (_, rule) => {
    expect(sheetWith({ entryRules: [{ area, blank: true, ...rule }] })?.validations).toEqual([]);
  });

  test("that paints in a look of its own is left out", () => {
    const formats = [{ area, formula: "B2>1", look: { ink: "#123456", fill: "#ffffff" } }];
    expect(sheetWith({ formats })?.rules).toEqual([]);
  });
});
