import type { InFile } from "../../src/workbook/sheet-rules";

/** Rules as they are, whichever elements of a file say them. */
export const bareRules = <Rule extends { readonly inFile?: InFile }>(
  rules: readonly Rule[] = [],
): Omit<Rule, "inFile">[] => rules.map(({ inFile: _, ...rule }) => rule);
