/** Codes of number formats as people type them: read, or refused with the reason. */
import { numfmt } from "@univerjs/core";
import { GENERAL, sectionsOf } from "./code";

const { tokenTypes: T, tokenize } = numfmt;

/** What shows as it is without quotation marks (ECMA-376 Part 1, 18.8.31), and the signs of currencies. */
const plain = /[$:!^&'~{}<>=\s\p{Sc}]/u;

/** In some languages these letters stand for eras and their years; ours knows none. */
const era = /^[gbe]/i;

export type ReadCode = { readonly code: string } | { readonly problem: string };

export function readCode(typed: string): ReadCode {
  const text = typed.trim();
  // Both forms are in the standard, the parser knows one.
  const code = text === "" ? GENERAL : text.replace(/([0#?])e([+-])/g, "$1E$2");
  const problem = problemOf(code);
  return problem === undefined ? { code } : { problem };
}

function problemOf(code: string): string | undefined {
  const tokens = tokenize(code);
  const bare = tokens.find(
    ({ type, raw }) =>
      (type === T.CHAR && !plain.test(raw)) || (type === T.DATETIME && era.test(raw)),
  );
  const modifier = tokens.find(({ type }) => type === T.MODIFIER);
  const sections = sectionsOf(code);
  if (tokens.some(({ type }) => type === T.ERROR)) return errorIn(code);
  if (modifier)
    return `${modifier.raw} is not known. In square brackets stand a colour, [Red] or [Color 5], a condition, [>=100], or hours beyond a day, [h].`;
  if (bare) return `Words stand in quotation marks${quoted(code)}.`;
  if (sections.length > 4)
    return "There are more than four parts: they are for positive numbers, negative ones, zero and text.";
  if (numfmt.isValidFormat(code)) return undefined;
  const isMixed = sections.some(
    (section) =>
      section.some(({ type }) => type === T.DATETIME) &&
      section.some(({ type }) => type === T.ZERO),
  );
  return isMixed
    ? "A part shows a date or a number, not both."
    : 'This is no code of a number format. Codes are 0.00, #,##0, 0.0 %, yyyy-mm-dd or 0.0 "kg/t".';
}

function errorIn(code: string): string {
  const read = code.replaceAll(/\\./g, "");
  if ((read.match(/"/g)?.length ?? 0) % 2 === 1) return "A quotation mark is not closed.";
  const unquoted = read.replaceAll(/"[^"]*"/g, "");
  if (/\[[^\]]*$/.test(unquoted)) return "A square bracket is not closed.";
  if (/[0#?.]e/i.test(unquoted)) return "After E stands + or -, as in 0.00E+00.";
  const last = code.at(-1) ?? "";
  if ("_*\\".includes(last)) return `After ${last} stands the character that it is for.`;
  return "This is no code of a number format.";
}

/** The code with its words in quotation marks, where they stand behind the number. */
function quoted(code: string): string {
  const [, number = "", words] =
    /^([#0?.,% ]*[#0?%]\s*)([^\s#0?"[\];@*_\\][^#0?"[\];@*_\\]*)$/.exec(code) ?? [];
  return words === undefined ? ', as in 0.0 "kg/t"' : `: ${number}"${words}"`;
}
