/** How a number is known. */
export type Evidence = "published" | "computed" | "typical, from memory" | "own table";

/** A property of an additive or a component: a number with its unit and range, or a text. */
export interface Entry {
  readonly value: number | string | boolean;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  readonly evidence: Evidence;
  /** Where it comes from, in words that can stand beside the number. */
  readonly source: string;
}

/** An additive or a component of the furnish, with all that is known of it by name of the property. */
export interface Item {
  readonly name: string;
  readonly kind: string;
  /** Other words of the trade for it. */
  readonly alsoCalled?: readonly string[];
  readonly properties: ReadonlyMap<string, Entry>;
}

/** A value, its low and its high. */
export type Span = readonly [value: number, low: number, high: number];

/** How far a value from memory can be trusted. */
type Confidence = "high" | "medium" | "low";

/** A typical value of the trade that nobody could trace to a publication. */
export type Typical = readonly [...Span, Confidence];

export function typical([value, low, high, confidence]: Typical, unit: string, remark = ""): Entry {
  const source = `Typical of the trade, from memory, confidence ${confidence}: measure your own.`;
  return {
    value,
    unit,
    low,
    high,
    evidence: "typical, from memory",
    source: remark === "" ? source : `${source} ${remark}`,
  };
}

export function published([value, low, high]: Span, unit: string, source: string): Entry {
  return { value, unit, low, high, evidence: "published", source };
}

/**
 * A value that the model computes, at the middle and at both ends of what it depends on. It is computed when
 * it is asked for, so that a workbook that never asks does not wait for it at the start.
 */
export function computed(
  compute: (share: number) => number,
  [middle, first, last]: Span,
  unit: string,
  source: string,
): Entry {
  return {
    get value() {
      return compute(middle);
    },
    unit,
    get low() {
      return Math.min(compute(first), compute(last));
    },
    get high() {
      return Math.max(compute(first), compute(last));
    },
    evidence: "computed",
    source,
  };
}

/** What a thing is, in words: from the publication that is named, or else from memory. */
export function described(value: string, publication?: string): Entry {
  return publication === undefined
    ? {
        value,
        unit: "text",
        evidence: "typical, from memory",
        source: "Textbook chemistry, from memory.",
      }
    : { value, unit: "text", evidence: "published", source: publication };
}
