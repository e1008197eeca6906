import { addressOf, areaAddress, parseArea } from "../../workbook/address";
import { closing, joined, type Token, tokensOf } from "../../workbook/formula/tokens";

/** A call of one of our functions as a formula writes it. */
export interface WrittenCall {
  readonly id: string;
  /** Each argument as it is written; "" where it is left out. */
  readonly given: readonly string[];
}

/** The calls of our functions in a formula, those inside others first, as they are computed. */
export function writtenCalls(formula: string, namespace: string): readonly WrittenCall[] {
  const tokens = tokensOf(formula.replace(/^=/, ""));
  const calls: (WrittenCall & { readonly end: number })[] = [];
  tokens.forEach((token, i) => {
    const [space, ...id] = token.text.split(".");
    if (token.kind !== "function" || space?.toUpperCase() !== namespace.toUpperCase()) return;
    const end = closing(tokens, i + 1);
    calls.push({
      id: id.join(".").toUpperCase(),
      given: argumentsIn(tokens.slice(i + 2, end)),
      end,
    });
  });
  return calls.sort((one, other) => one.end - other.end);
}

function argumentsIn(tokens: readonly Token[]): readonly string[] {
  const given: Token[][] = [[]];
  let depth = 0;
  for (const token of tokens) {
    if (token.kind === "mark" && "({".includes(token.text)) depth++;
    if (token.kind === "mark" && ")}".includes(token.text)) depth--;
    if (depth === 0 && token.kind === "mark" && token.text === ",") given.push([]);
    else given.at(-1)?.push(token);
  }
  return given.map((one) => joined(one).trim());
}

/** Where a number came from: of a plain range, the very cell that this row and column of the answer takes. */
export function cameFrom(given: string, row: number, column: number): string {
  const range = plainRange(given);
  if (range === undefined) return given;
  const { sheet, area } = range;
  const down = area.rows > 1 ? row : 0;
  const across = area.columns > 1 ? column : 0;
  if (down >= area.rows || across >= area.columns) return given;
  return `${sheet}${addressOf(area.row + down, area.column + across)}`;
}

/** Of a block with a case in each row, the row that a case takes. */
export function rowFrom(given: string, row: number): string {
  const range = plainRange(given);
  if (range === undefined || range.area.rows === 1 || row >= range.area.rows) return given;
  const { sheet, area } = range;
  return `${sheet}${areaAddress({ ...area, row: area.row + row, rows: 1 })}`;
}

/** A range and nothing else, with its sheet as it is written before it. */
function plainRange(given: string) {
  const parts = /^((?:'(?:[^']|'')*'|[^'!]+)!)?(\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+)$/i.exec(
    given,
  );
  if (parts === null) return undefined;
  const [, sheet = "", range = ""] = parts;
  return { sheet, area: parseArea(range) };
}
