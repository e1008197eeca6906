/** Formulas of rules that go on naming the same cells, as those in cells do by the grid. */
import { addressOf, parseArea, sheetPrefix } from "../../workbook/address";
import type { Area } from "../../workbook/book";
import { type Reference, referencesIn, writtenReference } from "../../workbook/formula/references";
import { sheetOf } from "../../workbook/formula/regions";
import type { NameOf } from "./charts";
import { type Followed, isGone, type Read } from "./followed";
import { firstRead, readFrom } from "./reads";

/** Texts by their keys, those that there are. */
type Texts = Readonly<Record<string, string | undefined>>;

export interface FollowedFormulas {
  /** The cells that they name, to be followed with those of the rule. */
  readonly reads: readonly Read[];
  /** As they read for the first cell of a part of the rule; undefined once cells that they name are gone. */
  at(part: Followed, nameOf: NameOf): Readonly<Record<string, string>> | undefined;
}

/** Formulas that are written for the first cell of `home`. */
export function followFormulas(
  home: { readonly sheetId: string; readonly area: Area },
  formulas: Texts,
  idOf: (sheet: string) => string,
): FollowedFormulas {
  const reads: Read[] = [];
  const written = Object.entries(formulas).flatMap(([key, formula]) => {
    if (formula === undefined) return [];
    const parts = referencesIn(formula).map((part) => {
      if (typeof part === "string") return () => part;
      const index = reads.push(readOf(part, home, idOf)) - 1;
      return ({ reads = [], sheetId }: Followed, nameOf: NameOf) =>
        textOf(part, reads[index] as Read, sheetId, nameOf);
    });
    return [[key, parts] as const];
  });
  return {
    reads,
    at(part, nameOf) {
      const texts: Record<string, string> = {};
      for (const [key, parts] of written) {
        const now = parts.map((text) => text(part, nameOf));
        if (!now.every((text) => text !== undefined)) return undefined;
        texts[key] = now.join("");
      }
      return texts;
    },
  };
}

function readOf(
  { prefix, ends, lines }: Reference,
  home: { readonly sheetId: string; readonly area: Area },
  idOf: (sheet: string) => string,
): Read {
  const sheetId = prefix === undefined ? home.sheetId : idOf(sheetOf(prefix));
  const [first = "", last = first] = ends;
  const relative = (sign: RegExp): [boolean, boolean] => [sign.test(first), sign.test(last)];
  const fixed: [boolean, boolean] = [false, false];
  const rows = lines === "columns" ? fixed : relative(/[a-z]\d/i);
  const columns = lines === "rows" ? fixed : relative(/^[a-z]/i);
  return readFrom(home, { sheetId, area: parseArea(ends.join(":")) }, rows, columns);
}

function textOf(
  reference: Reference,
  read: Read,
  ruleSheet: string,
  nameOf: NameOf,
): string | undefined {
  const { ends } = reference;
  const area = firstRead(read);
  const name = nameOf(read.sheetId);
  if (name === undefined || isGone({ area })) return undefined;
  const corners = [
    [area.row, area.column],
    [area.row + area.rows - 1, area.column + area.columns - 1],
  ] as const;
  const now = ends.map((end, index) => withMarks(end, ...(corners[index] as [number, number])));
  const prefix = read.sheetId === ruleSheet ? undefined : sheetPrefix(name);
  return writtenReference({ ...reference, prefix, ends: now });
}

/** The address with the dollar signs that it was written with. */
function withMarks(written: string, row: number, column: number): string {
  const [, columnMark = "", rowMark = ""] = /^(\$?)[a-z]+(\$?)/i.exec(written) ?? [];
  return addressOf(row, column).replace(
    /([A-Z]+)(\d+)/,
    `${columnMark.replace("$", "$$$$")}$1${rowMark.replace("$", "$$$$")}$2`,
  );
}
