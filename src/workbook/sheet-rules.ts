/** What a sheet paints over its cells and asks of those who type into them, whichever file or plan it comes from. */
import type { Area, Style } from "./book";

export interface ConditionalFormat {
  readonly area: Area;
  /** Without "=", as it stands for the upper left cell; the look shows where it gives TRUE. */
  readonly formula: string;
  readonly look: Pick<Style, "bold" | "italic" | "ink" | "fill">;
  /** Formats that come later do not show where this one does. */
  readonly stops?: boolean;
}

export type Comparison =
  | "between"
  | "notBetween"
  | "equal"
  | "notEqual"
  | "greaterThan"
  | "greaterThanOrEqual"
  | "lessThan"
  | "lessThanOrEqual";

export interface EntryRule {
  readonly area: Area;
  readonly type: "any" | "decimal" | "whole" | "date" | "list" | "custom";
  /** Of numbers and dates; without it any number or date will do. */
  readonly comparison?: Comparison;
  /** Formulas without "=", as they stand for the upper left cell; a list of choices is a text in quotes. */
  readonly from?: string;
  readonly to?: string;
  /** Whether the cell may be emptied. */
  readonly blank: boolean;
  readonly prompt?: string;
  /** What a person reads who typed something else. Without it anything is taken: the rule only helps. */
  readonly refusal?: string;
}
