/**
 * Codes of number formats, made into others: more decimals, thousands set apart, a percentage. The notation is
 * that of ECMA-376 Part 1 (5th edition), 18.8.30 numFmt and 18.8.31 numFmts.
 */
import { numfmt } from "@univerjs/core";

export const GENERAL = "General";
export const TEXT = "@";
/** ISO 8601, as the templates write days. */
export const DATE = "yyyy-mm-dd";

export const isGeneral = (code: string | undefined) => !code || /^general$/i.test(code);

/** As many as a number of double precision can need; others take no more, either (from memory). */
const MOST_DECIMALS = 30;
/** Of a share that came without a format. */
const MOST_DECIMALS_OF_SHARE = 2;

type Token = ReturnType<typeof numfmt.tokenize>[number];
const { tokenTypes: T, tokenize } = numfmt;

const isDigit = ({ type }: Token) => type === T.ZERO || type === T.HASH || type === T.QMARK;
const textOf = (tokens: readonly Token[]) => tokens.map(({ raw }) => raw).join("");

export function sectionsOf(code: string): Token[][] {
  const sections: Token[][] = [[]];
  for (const token of tokenize(code))
    if (token.type === T.BREAK) sections.push([]);
    else sections.at(-1)?.push(token);
  return sections;
}

/** Of a section that writes a decimal number: its tokens, and which of them are the digits of the number. */
interface Digits {
  readonly tokens: readonly Token[];
  readonly whole: readonly number[];
  readonly decimals: readonly number[];
  /** Where the point is, or -1. */
  readonly point: number;
  readonly scientific: boolean;
}

function digitsOf(tokens: readonly Token[]): Digits | undefined {
  const has = (type: unknown) => tokens.some((token) => token.type === type);
  const exponent = tokens.findIndex(({ type }) => type === T.EXP);
  const number = exponent < 0 ? tokens : tokens.slice(0, exponent);
  const digits = [...number.keys()].filter((at) => isDigit(number[at] as Token));
  if (digits.length === 0 || has(T.DATETIME) || has(T.DURATION) || has(T.SLASH)) return undefined;
  const point = number.findIndex(({ type }) => type === T.POINT);
  return {
    tokens,
    whole: digits.filter((at) => point < 0 || at < point),
    decimals: digits.filter((at) => point >= 0 && at > point),
    point,
    scientific: exponent >= 0,
  };
}

/** Each section of the code that writes a decimal number, made anew; all others as they are. */
const remade = (code: string, make: (digits: Digits) => string): string =>
  sectionsOf(code)
    .map((tokens) => {
      const digits = digitsOf(tokens);
      return digits ? make(digits) : textOf(tokens);
    })
    .join(";");

/** The code that writes a number as it is shown without one: "0.333" by "0.000", "1.2e-7" by "0.0E+00". */
export function codeOfShown(shown: string): string {
  const [, decimals = "", exponent] = /^-?\d*(?:\.(\d*))?(e.*)?$/i.exec(shown) ?? [];
  const digits = decimals === "" ? "0" : `0.${"0".repeat(decimals.length)}`;
  return exponent ? `${digits}E+00` : digits;
}

/** What to go out from; `shown` is how the number stands there as long as the code is the general one. */
const startOf = (code: string, shown: string) => (isGeneral(code) ? codeOfShown(shown) : code);

export const moreDecimals = (code: string, shown: string): string =>
  remade(startOf(code, shown), ({ tokens, whole, decimals, point }) => {
    if (decimals.length >= MOST_DECIMALS) return textOf(tokens);
    const last = decimals.at(-1) ?? (point < 0 ? (whole.at(-1) as number) : point);
    const added = point < 0 ? ".0" : "0";
    return textOf(tokens.slice(0, last + 1)) + added + textOf(tokens.slice(last + 1));
  });

export const fewerDecimals = (code: string, shown: string): string =>
  remade(startOf(code, shown), ({ tokens, decimals, point }) =>
    textOf(
      tokens.filter((_, at) => at !== decimals.at(-1) && (at !== point || decimals.length > 1)),
    ),
  );

export const isGrouped = (code: string): boolean =>
  sectionsOf(code).some(
    (tokens) => digitsOf(tokens) && tokens.some(({ type }) => type === T.GROUP),
  );

/** Sets thousands apart, as far as the whole digits stand together: 000-000 is no amount. */
export const withThousands = (code: string, shown: string): string =>
  remade(startOf(code, shown), ({ tokens, whole, scientific }) => {
    const [first = 0, last = 0] = [whole[0], whole.at(-1)];
    const apart = last - first + 1 !== whole.length;
    if (whole.length === 0 || scientific || apart) return textOf(tokens);
    const digits = textOf(tokens.slice(first, last + 1)).padStart(4, "#");
    const grouped = `${digits.slice(0, -3)},${digits.slice(-3)}`;
    return textOf(tokens.slice(0, first)) + grouped + textOf(tokens.slice(last + 1));
  });

export const withoutThousands = (code: string): string =>
  remade(code, ({ tokens, whole }) => {
    if (!tokens.some(({ type }) => type === T.GROUP)) return textOf(tokens);
    // The hashes were there to put the comma behind.
    const needed = whole.find((at) => tokens[at]?.type !== T.HASH) ?? whole.at(-1) ?? 0;
    return textOf(
      tokens.filter(({ type }, at) => type !== T.GROUP && !(whole.includes(at) && at < needed)),
    );
  });

export function asPercentage(code: string, shown: string): string {
  if (numfmt.isPercentFormat(code)) return code;
  const decimals = Math.max(0, decimalsOf(startOf(code, shown)) - 2);
  const wanted = isGeneral(code) ? Math.min(decimals, MOST_DECIMALS_OF_SHARE) : decimals;
  return `${wanted === 0 ? "0" : `0.${"0".repeat(wanted)}`} %`;
}

const decimalsOf = (code: string) => {
  const [section] = sectionsOf(code).map(digitsOf);
  return section?.decimals.length ?? 0;
};
