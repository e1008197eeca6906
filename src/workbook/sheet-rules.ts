/** What a sheet paints over its cells and asks of those who type into them, whichever file or plan it comes from. */
import type { Area, Style } from "./book";

/** Which element of its file says a rule, counted among those of its kind: it may stand over several areas. */
export interface InFile {
  readonly sheet: string;
  readonly index: number;
}

export interface ConditionalFormat {
  readonly inFile?: InFile;
  /** A rule over several areas stands here once for each. */
  readonly area: Area;
  /** Without "=", as it stands for the upper left cell; the look shows where it gives TRUE. */
  readonly formula?: string;
  /** In place of a formula: a rule that compares all its cells with one another. */
  readonly ranking?: Ranking;
  readonly look: RuleLook;
  /** Formats that come later do not show where this one does. */
  readonly stops?: boolean;
}

/** A format with all the areas whose cells it compares with one another. */
export interface WholeFormat {
  readonly format: ConditionalFormat;
  readonly areas: readonly [Area, ...Area[]];
}

/**
 * A ranking over several areas is one over all their cells: a rule applies to a range that is written as a
 * sequence of references (ECMA-376 Part 1, 18.3.1.18 and 18.18.76). A formula judges each cell for itself.
 */
export function wholeFormats(formats: readonly ConditionalFormat[]): WholeFormat[] {
  const known = new Map<string, [Area, ...Area[]]>();
  return formats.flatMap((format) => {
    const { area, ranking, inFile } = format;
    if (!ranking || !inFile) return [{ format, areas: [area] }];
    const key = `${inFile.index} ${inFile.sheet}`;
    const others = known.get(key);
    if (others) {
      others.push(area);
      return [];
    }
    const areas: [Area, ...Area[]] = [area];
    known.set(key, areas);
    return [{ format, areas }];
  });
}

/** A scale of colours, bars, the highest ten…, as its file says it. */
export interface Ranking {
  readonly attributes: Readonly<Record<string, string>>;
  /** The XML inside the rule. */
  readonly inner: string;
  /** Of bars: what an extension of the file says of them beyond that, the XML inside it without prefixes. */
  readonly extension?: string;
}

export interface RuleLook extends Pick<Style, "bold" | "italic" | "ink" | "fill"> {
  /** The whole look as its file says it: also what none of the others can tell. */
  readonly xml?: string;
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
  readonly inFile?: InFile;
  readonly area: Area;
  readonly type: "any" | "decimal" | "whole" | "date" | "list" | "custom";
  /** Of numbers and dates; without it any number or date will do. */
  readonly comparison?: Comparison;
  /** Formulas without "=", as they stand for the upper left cell; a list of choices is a text in quotes. */
  readonly from?: string;
  readonly to?: string;
  /** Of a list: its cells show no arrow that opens it. */
  readonly arrowHidden?: boolean;
  /** Whether the cell may be emptied. */
  readonly blank: boolean;
  readonly prompt?: Words;
  /** What a person reads who typed something else. Without it anything is taken: the rule only helps. */
  readonly refusal?: Refusal;
}

export interface Words {
  readonly title?: string;
  readonly text: string;
}

export interface Refusal extends Words {
  /** What was typed may stand all the same. */
  readonly mild?: "warning" | "information";
}

/** Where no limit is set, any number may be typed: from the least to the greatest that a cell holds. */
const anyNumber = { comparison: "between", from: "-1E+307", to: "1E+307" } as const;

/** What numbers and dates are compared with. */
export const limitsOf = ({ comparison, from = "", to }: EntryRule) =>
  comparison === undefined ? anyNumber : { comparison, from, to };
