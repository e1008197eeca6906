/** How a file compares a value with one bound or two. */
import type { Comparison } from "../sheet-rules";

const signs: Partial<Record<Comparison, string>> = {
  equal: "=",
  notEqual: "<>",
  greaterThan: ">",
  greaterThanOrEqual: ">=",
  lessThan: "<",
  lessThanOrEqual: "<=",
};

const all: ReadonlySet<string> = new Set(["between", "notBetween", ...Object.keys(signs)]);

export const isComparison = (operator: string): operator is Comparison => all.has(operator);

/** As a formula; undefined where it cannot be told. */
export function comparison(
  value: string,
  operator = "between",
  from?: string,
  to?: string,
): string | undefined {
  if (!isComparison(operator) || from === undefined) return undefined;
  const sign = signs[operator];
  if (sign !== undefined) return `${value}${sign}(${from})`;
  if (to === undefined) return undefined;
  return operator === "between"
    ? `AND(${value}>=(${from}),${value}<=(${to}))`
    : `OR(${value}<(${from}),${value}>(${to}))`;
}
