import { addressOf, parseAddress } from "../../../src/workbook/address";
import type {
  Allowed,
  BlockPart,
  InputPart,
  Part,
  ResultPart,
  TextPart,
} from "../../../src/workbook/plan";

/** A day: what stands for one that was long ago is a slip of the hand. */
export const day: Allowed = {
  date: { from: { formula: "DATE(2000,1,1)", words: "1 January 2000" } },
};

type Unplaced<P> = Omit<P, "at">;
/** A part that takes one row. */
export type Line =
  | Unplaced<TextPart>
  | Unplaced<InputPart>
  | Unplaced<ResultPart>
  | Unplaced<BlockPart>;

/** Parts one below the other; null leaves a row free. A result that fails is marked. */
export function down(at: string, lines: readonly (Line | null)[]): Part[] {
  const { row, column } = parseAddress(at);
  return lines.flatMap((line, index): Part[] =>
    line === null ? [] : [{ ...line, at: addressOf(row + index, column) }, ...failureOf(line)],
  );
}

const failureOf = (line: Line): Part[] =>
  line.kind === "result"
    ? [{ kind: "rule", on: `{${line.name}}`, when: "error", look: "breach" }]
    : [];

export const heading = (text: string): Line => ({ kind: "text", look: "heading", text });
export const note = (text: string, span?: number): Line => ({
  kind: "text",
  look: "note",
  text,
  ...(span === undefined ? {} : { span }),
});
export const body = (text: string): Line => ({ kind: "text", look: "body", text });
/** What something is called: a text that headings elsewhere take over. */
export const nameOf = (name: string, label: string, value: string, help: string): Line => ({
  kind: "input",
  name,
  label,
  unit: "",
  value,
  allow: { formula: "ISTEXT({cell})", words: "a name, not a number" },
  help,
});

/** Says in words what the numbers above it say. */
export const sentence = (formula: string): Line => ({
  kind: "block",
  look: "body",
  rows: [[`=${formula}`]],
});
/** A note whose words are computed. */
export const computedNote = (formula: string): Line => ({
  kind: "block",
  look: "note",
  rows: [[`=${formula}`]],
});
export const caution = (text: string, span: number): Line => ({
  kind: "text",
  look: "caution",
  text,
  span,
});

interface Asked {
  readonly from?: number;
  readonly to?: number;
  readonly help?: string;
  readonly note?: string;
}

const input = (
  name: string,
  label: string,
  unit: string,
  value: number,
  format: string,
  kind: "number" | "whole",
  { from, to, ...said }: Asked,
): Line => {
  const limits = { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
  const allow = kind === "number" ? { number: limits } : { whole: limits };
  return { kind: "input", name, label, unit, value, format, allow, ...said };
};

export const number = (
  name: string,
  label: string,
  unit: string,
  value: number,
  format: string,
  asked: Asked = {},
): Line => input(name, label, unit, value, format, "number", { from: 0, ...asked });

export const wholeNumber = (
  name: string,
  label: string,
  unit: string,
  value: number,
  { format = "#,##0", ...asked }: Asked & { readonly format?: string } = {},
): Line => input(name, label, unit, value, format, "whole", { from: 1, ...asked });

/** A share, shown in per cent. */
export const fraction = (
  name: string,
  label: string,
  value: number,
  { format = "0.0 %", ...asked }: Asked & { readonly format?: string } = {},
): Line => input(name, label, "fraction", value, format, "number", { from: 0, to: 1, ...asked });

export const choice = (
  name: string,
  label: string,
  value: string,
  listedIn: string,
  help: string,
): Line => ({ kind: "input", name, label, unit: "", value, allow: { listedIn }, help });

export const result = (
  name: string,
  label: string,
  unit: string,
  format: string,
  formula: string,
  said: { readonly headline?: boolean; readonly note?: string } = {},
): Line => ({ kind: "result", name, label, unit, format, formula, ...said });
