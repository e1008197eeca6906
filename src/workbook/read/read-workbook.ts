import type { Book, Sheet, Style, Table } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import { type Limits, usualLimits } from "../package/limits";
import { openPackage, type WorkbookPackage } from "../package/open-package";
import { xmlReader } from "../xml";
import { Allowance } from "./allowance";
import { readComments, readPeople } from "./comments";
import { readDynamicMarks } from "./metadata";
import { type Reading, SheetReader } from "./sheet";
import { readStrings } from "./strings";
import { readStyles, styleName } from "./styles";
import { readTables } from "./tables";
import { readTheme } from "./theme";
import { readWorkbookPart, type WorkbookPart } from "./workbook-part";

/** A workbook that was read, and its file, for those who write into it. */
export interface OpenedWorkbook {
  readonly book: Book;
  readonly file: WorkbookPackage;
  readonly part: WorkbookPart;
}

async function readSheet(
  file: WorkbookPackage,
  entry: WorkbookPart["sheets"][number],
  reading: Reading,
): Promise<Sheet> {
  const sheet = new SheetReader(reading, entry.path);
  const reader = xmlReader(entry.path, sheet);
  await file.stream(entry.path, (chunk) => reader.write(chunk));
  reader.close();
  return sheet.sheet(entry.name, entry.hidden);
}

/** Reads an .xlsx or .xlsm file. Whatever is wrong with it ends in a WorkbookRefusal. */
export async function readWorkbook(
  bytes: Uint8Array,
  names: FunctionNames,
  limits: Limits = usualLimits,
): Promise<OpenedWorkbook> {
  const file = await openPackage(bytes, limits);
  const allowance = new Allowance(limits);
  const part = await readWorkbookPart(file, names, allowance);
  const theme = await readTheme(file, part.paths.theme);
  const { cells, differences } = await readStyles(file, part.paths.styles, theme);
  const reading: Reading = {
    names,
    strings: await readStrings(file, part.paths.strings, limits),
    dynamicMarks: await readDynamicMarks(file, part.paths.metadata),
    styleCount: cells.length,
    differences,
    theme,
    allowance,
  };
  const sheets: Sheet[] = [];
  const tables: Table[] = [];
  const people = await readPeople(file, part.path);
  for (const entry of part.sheets) {
    const comments = await readComments(file, entry.path, people);
    const sheet = await readSheet(file, entry, reading);
    sheets.push(comments.length > 0 ? { ...sheet, comments } : sheet);
    tables.push(...(await readTables(file, entry.path, entry.name)));
  }
  const styles: Record<string, Style> = {};
  cells.forEach((style, index) => {
    styles[styleName(index)] = style;
  });
  const book: Book = { sheets, tables, styles, definedNames: part.definedNames };
  return { book, file, part };
}
