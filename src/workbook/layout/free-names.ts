/** Names that the receiving workbook uses already, in small letters. */
export interface Taken {
  readonly sheets: ReadonlySet<string>;
  /** Defined names and tables: they share one space. */
  readonly words: ReadonlySet<string>;
}

export const nothingTaken: Taken = { sheets: new Set(), words: new Set() };

const longestSheetName = 31;

/** "Log" where it is free, else "Log 2", "Log 3"…, cut so that it stays a sheet's name. */
export function freeSheetName(name: string, taken: ReadonlySet<string>): string {
  if (name.length === 0 || name.length > longestSheetName || /[:\\/?*[\]]|^'|'$/.test(name))
    throw new Error(`"${name}" cannot be the name of a sheet.`);
  for (let copy = 1; ; copy++) {
    const ending = copy === 1 ? "" : ` ${copy}`;
    const candidate = name.slice(0, longestSheetName - ending.length) + ending;
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
}

/** A spreadsheet takes these for cells: DS1, R2C3, XFD12, R, C. */
const looksLikeCell = /^(?:[a-z]{1,3}\d+|r\d*c\d*|r|c|true|false)$/i;

/** The symbol itself where it is free, else with _2, _3… */
export function freeWord(symbol: string, taken: ReadonlySet<string>): string {
  if (!/^[a-z][A-Za-z0-9]*$/.test(symbol) || looksLikeCell.test(symbol))
    throw new Error(`"${symbol}" cannot be a symbol: small letters first, and no cell address.`);
  for (let copy = 1; ; copy++) {
    const candidate = copy === 1 ? symbol : `${symbol}_${copy}`;
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
}
