import { addressOf } from "../address";
import type { Area } from "../book";
import type { Allowed, EntryBound } from "../plan";
import type { EntryRule } from "../sheet-rules";
import type { Draft } from "./draft";
import { absoluteCells, cellsOf, inFormula } from "./symbols";

interface Asked {
  readonly allow?: Allowed | undefined;
  readonly help?: string | undefined;
  /** The label or the header, for the title of the message. */
  readonly label: string;
  readonly unit?: string | undefined;
}

/** A title that is longer makes Excel repair the file. */
const longestTitle = 32;
const longestText = 255;
const cut = (text: string, length: number) =>
  text.length <= length ? text : `${text.slice(0, length - 1)}…`;

interface Limits {
  readonly from?: EntryBound;
  readonly to?: EntryBound;
}

const shown = (bound: EntryBound) => (typeof bound === "number" ? `${bound}` : bound.words);

function range(kind: string, { from, to }: Limits, unit = ""): string {
  const limits =
    from !== undefined && to !== undefined
      ? ` from ${shown(from)} to ${shown(to)}`
      : from !== undefined
        ? ` of ${shown(from)} or more`
        : to !== undefined
          ? ` of ${shown(to)} or less`
          : "";
  const form = unit === "fraction" ? ", as 0.03 or 3 %" : unit === "" ? "" : ` (${unit})`;
  return `Give ${kind}${limits}${form}.`;
}

type Bounds = Pick<EntryRule, "comparison" | "from" | "to">;

function test(draft: Draft, area: Area, allow: Allowed, unit: string | undefined) {
  const place = { sheet: draft.name, cell: { row: area.row, column: area.column } };
  const bound = (value: EntryBound) =>
    typeof value === "number" ? `${value}` : inFormula(draft.symbols, value.formula, place);
  const bounds = ({ from, to }: Limits): Bounds => {
    if (from !== undefined && to !== undefined)
      return { comparison: "between", from: bound(from), to: bound(to) };
    if (from !== undefined) return { comparison: "greaterThanOrEqual", from: bound(from) };
    return to === undefined ? {} : { comparison: "lessThanOrEqual", from: bound(to) };
  };
  if ("number" in allow)
    return {
      type: "decimal" as const,
      ...bounds(allow.number),
      refusal: range("a number", allow.number, unit),
    };
  if ("numberOrText" in allow) {
    const { from, to } = allow.numberOrText;
    const cell = inFormula(draft.symbols, "{cell}", place);
    return {
      type: "custom" as const,
      from: `OR(ISTEXT(${cell}),AND(${cell}>=${from},${cell}<=${to}))`,
      refusal: `${range("a number", { from, to }, unit)} Or write why there is none.`,
    };
  }
  if ("whole" in allow)
    return {
      type: "whole" as const,
      ...bounds(allow.whole),
      refusal: range("a whole number", allow.whole, unit),
    };
  if ("date" in allow)
    return {
      type: "date" as const,
      ...bounds(allow.date),
      refusal: `Give a date from ${allow.date.from.words} on.`,
    };
  if ("oneOf" in allow) {
    const from = `"${allow.oneOf.join(",").replaceAll('"', '""')}"`;
    if (from.length > longestText || allow.oneOf.some((choice) => choice.includes(",")))
      throw new Error(
        `The choices at ${addressOf(area.row, area.column)} need cells of their own.`,
      );
    return { type: "list" as const, from, refusal: `Choose one of ${allow.oneOf.join(", ")}.` };
  }
  if ("listedIn" in allow) {
    const cells = cellsOf(draft.symbols, allow.listedIn);
    const from = cells.spillAt
      ? inFormula(draft.symbols, allow.listedIn, { sheet: "" })
      : absoluteCells(cells);
    return { type: "list" as const, from, refusal: "Choose one from the list." };
  }
  const from = inFormula(draft.symbols, allow.formula, place);
  return { type: "custom" as const, from, refusal: `Give ${allow.words}.` };
}

/** Notes what may be typed into an area, and what is shown while it is selected. */
export function allowIn(draft: Draft, area: Area, { allow, help, label, unit }: Asked): void {
  if (!allow) return;
  const { refusal, ...rule } = test(draft, area, allow, unit);
  draft.entryRules.push({
    area,
    ...rule,
    blank: true,
    refusal: { title: "Please check", text: cut(refusal, longestText) },
    prompt: { title: cut(label, longestTitle), text: cut(help ?? refusal, longestText) },
  });
}
