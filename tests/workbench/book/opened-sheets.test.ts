import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, inject, test } from "vitest";
import { openedSheets } from "../../../src/workbench/book/opened-sheets";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { plans } from "../../../templates/plans";

const names = functionNames(inject("functions").metadata.functions.map(({ id }) => id));

describe("a template's file that is opened", () => {
  test.each(plans)("$id has the rules of its plan", async (plan) => {
    const file = path.join(import.meta.dirname, `../../../templates/${plan.id}.xlsx`);
    const { book } = await readWorkbook(new Uint8Array(readFileSync(file)), names);
    const opened = openedSheets(book, []).sheets;
    for (const [index, { formats, entryRules }] of layOut(plan).sheets.entries()) {
      expect(opened[index]?.formats).toMatchObject(formats);
      expect(opened[index]?.entryRules).toMatchObject(entryRules);
    }
  });
});
