import type { ArgumentReference, FunctionReference } from "../../help/reference";
import { tokensOf } from "../../workbook/formula/tokens";

/** What a person typed for each argument, by its name. */
export type Typed = Readonly<Record<string, string>>;

export type Written =
  | { readonly formula: string }
  /** What is wrong, by the name of the argument. */
  | { readonly faults: Readonly<Record<string, string>> };

/** The complete formula from what was typed, or what is still missing or wrong. */
export function writeFormula(namespace: string, one: FunctionReference, typed: Typed): Written {
  const faults: Record<string, string> = {};
  const written = one.arguments.map((argument) => {
    const text = (typed[argument.name] ?? "").trim();
    const fault = faultOf(argument, text);
    if (fault !== undefined) faults[argument.name] = fault;
    return fault === undefined ? inFormula(argument, text) : "";
  });
  if (Object.keys(faults).length > 0) return { faults };
  while (written.at(-1) === "") written.pop();
  return { formula: `=${namespace}.${one.id}(${written.join(",")})` };
}

function faultOf(argument: ArgumentReference, text: string): string | undefined {
  if (text === "") {
    return argument.optional ? undefined : `Give a cell, a range or a value [${argument.unit}].`;
  }
  if (/^-?\d+,\d+ ?%?$/.test(text)) {
    return `Write ${text.replace(",", ".")}: in a formula a comma parts the arguments.`;
  }
  if (isText(argument)) return undefined;
  const open = openMark(text);
  if (open !== undefined) return `${open} is left open or closes nothing.`;
  if (topLevelMark(text, ",") || topLevelMark(text, ";")) {
    return "Give one range or one value. Several values go in braces: {1,2,3}.";
  }
  return undefined;
}

/** A text argument takes its words without quotes; a cell or another formula can still be given. */
function inFormula(argument: ArgumentReference, text: string): string {
  if (text === "") return "";
  const plain = text.replace(/^=/, "");
  if (!isText(argument) || text.startsWith("=")) return plain;
  return isReference(text) || /^".*"$/s.test(text) ? plain : `"${plain.replaceAll('"', '""')}"`;
}

const isText = ({ unit, choices }: ArgumentReference) =>
  choices !== undefined || unit === "text" || unit.startsWith("text,");

/** A cell or a range, on whichever sheet, and nothing else. */
function isReference(text: string): boolean {
  const kinds = tokensOf(text).map(({ kind, text: token }) => (kind === "mark" ? token : kind));
  return /^(sheet )?(cell( : cell)?|columns|rows|word bracket)$/.test(kinds.join(" "));
}

const PAIRS: Readonly<Record<string, string>> = { "(": ")", "{": "}" };

/** The first bracket, brace or quote without its other half. */
function openMark(text: string): string | undefined {
  const open: string[] = [];
  for (const { kind, text: token } of tokensOf(text)) {
    if (kind === "text" && (token.length < 2 || !token.endsWith('"'))) return 'A quote "';
    if (kind !== "mark") continue;
    if (token in PAIRS) open.push(token);
    else if (Object.values(PAIRS).includes(token) && PAIRS[open.pop() ?? ""] !== token) {
      return `A bracket ${token}`;
    }
  }
  return open.length === 0 ? undefined : `A bracket ${open.at(-1)}`;
}

/** Whether a mark stands outside every bracket and brace. */
function topLevelMark(text: string, mark: string): boolean {
  let depth = 0;
  for (const { kind, text: token } of tokensOf(text)) {
    if (kind !== "mark") continue;
    if (token in PAIRS) depth++;
    else if (Object.values(PAIRS).includes(token)) depth--;
    else if (token === mark && depth === 0) return true;
  }
  return false;
}
