/** Of a workbook that was opened, what its sheets hold beside their cells, as far as a plan could say it. */
import type { Book, Sheet } from "../workbook/book";
import { ruleLooks } from "../workbook/layout/looks";
import {
  bareSheet,
  type PlannedBook,
  type PlannedChart,
  type PlannedSheet,
  type Rule,
  type Validation,
} from "../workbook/layout/planned";
import type { ConditionalFormat, EntryRule } from "../workbook/sheet-rules";

export const openedSheets = (
  book: Book,
  charts: readonly (readonly PlannedChart[])[],
): Pick<PlannedBook, "sheets" | "tables" | "styles"> => ({
  sheets: book.sheets.map((sheet, index) => openedSheet(sheet, charts[index] ?? [])),
  tables: book.tables.map((table) => ({ ...table, formulas: [] })),
  styles: {},
});

const openedSheet = (sheet: Sheet, charts: readonly PlannedChart[]): PlannedSheet => ({
  ...sheet,
  ...bareSheet,
  charts,
  validations: (sheet.entryRules ?? []).flatMap((rule) => validationOf(rule) ?? []),
  rules: (sheet.formats ?? []).flatMap((format) => ruleOf(format) ?? []),
});

function validationOf({ area, type, comparison, from, to, prompt, refusal }: EntryRule) {
  if (type === "any" || refusal === undefined) return undefined;
  const bounds = type === "list" || type === "custom" ? { from } : boundsOf(comparison, from, to);
  if (!bounds) return undefined;
  const validation: Validation = {
    area,
    type,
    refusal,
    ...(bounds.from !== undefined && { from: bounds.from }),
    ...("to" in bounds && bounds.to !== undefined && { to: bounds.to }),
    ...(prompt !== undefined && { prompt: { title: "", text: prompt } }),
  };
  return validation;
}

function boundsOf(comparison: EntryRule["comparison"], from?: string, to?: string) {
  switch (comparison) {
    case undefined:
      return {};
    case "between":
      return { from, to };
    case "greaterThanOrEqual":
      return { from };
    case "lessThanOrEqual":
      return { to: from };
    default:
      return undefined;
  }
}

const looks = Object.keys(ruleLooks) as Rule["look"][];

function ruleOf({ area, formula, look, stops }: ConditionalFormat): Rule | undefined {
  const known = looks.find((name) => {
    const its: ConditionalFormat["look"] = ruleLooks[name];
    return (
      its.ink === look.ink && its.fill === look.fill && Boolean(its.bold) === Boolean(look.bold)
    );
  });
  return known && !stops && !look.italic ? { area, test: { formula }, look: known } : undefined;
}
