import type { Book, Cell, Extent, Sheet, Style, Value } from "../book";
import { isError } from "../book";

/** What becomes of one cell of a file. */
export interface CellEdit {
  /** What the cell shows afterwards; null empties it. Undefined: it keeps all that it holds. */
  readonly value?: Value;
  /** In the form that people see. Undefined: the cell keeps the formula that it has, or has none. */
  readonly formula?: string | null;
  /** What its array formula fills now. */
  readonly spill?: Extent;
  readonly fixed?: boolean;
  /** A look of the file, by its key there; null takes it away. Undefined: the cell keeps its own. */
  readonly style?: string | null;
  /** A look that the file does not have. */
  readonly look?: LookEdit;
}

/** How a cell looked and is to look; what neither of them says stays as its file has it. */
export interface LookEdit {
  readonly before: Style;
  readonly after: Style;
}

/** Which of the file's looks a cell or a column has after the edit that has this one now. */
export type LookOf = (index: number, edit: LookEdit) => number;

/** By row, then by column. */
export type SheetEdits = ReadonlyMap<number, ReadonlyMap<number, CellEdit>>;

/** By the sheet's name. */
export type WorkbookEdits = ReadonlyMap<string, SheetEdits>;

export const sameValue = (one: Value, other: Value): boolean =>
  isError(one) && isError(other) ? one.error === other.error : Object.is(one, other);

const sameSpill = (one: Extent | undefined, other: Extent | undefined): boolean =>
  one?.rows === other?.rows && one?.columns === other?.columns;

function editOf(
  before: Cell | undefined,
  after: Cell | undefined,
  styles: Book["styles"],
): CellEdit | undefined {
  const value = after?.value ?? null;
  const sameFormula = before?.formula === after?.formula;
  const spillChanged = after?.formula !== undefined && !sameSpill(before?.spill, after.spill);
  const style = after?.style ?? null;
  // What becomes of a look that the file does not have is another matter: see withLooks.
  const restyled = style !== (before?.style ?? null) && (style === null || style in styles);
  if (sameFormula && !spillChanged && sameValue(before?.value ?? null, value))
    return restyled ? { style } : undefined;
  return {
    value,
    ...(sameFormula ? {} : { formula: after?.formula ?? null }),
    ...(after?.spill ? { spill: after.spill } : {}),
    ...(after?.fixed ? { fixed: true } : {}),
    ...(restyled ? { style } : {}),
  };
}

function sheetEdits(before: Sheet, after: Sheet, styles: Book["styles"]): SheetEdits {
  const edits = new Map<number, Map<number, CellEdit>>();
  if (before === after) return edits;
  const rows = new Set([...Object.keys(before.cells), ...Object.keys(after.cells)].map(Number));
  for (const row of rows) {
    const old = before.cells[row] ?? {};
    const fresh = after.cells[row] ?? {};
    const line = new Map<number, CellEdit>();
    for (const column of new Set([...Object.keys(old), ...Object.keys(fresh)].map(Number))) {
      const edit = editOf(old[column], fresh[column], styles);
      if (edit) line.set(column, edit);
    }
    if (line.size > 0) edits.set(row, line);
  }
  return edits;
}

/** What has to be done to a file that holds one book so that it holds another with the same sheets. */
export function editsBetween(before: Book, after: Book): WorkbookEdits {
  const edits = new Map<string, SheetEdits>();
  for (const sheet of before.sheets) {
    const fresh = after.sheets.find(({ name }) => name === sheet.name);
    const changed: SheetEdits = fresh ? sheetEdits(sheet, fresh, before.styles) : new Map();
    if (changed.size > 0) edits.set(sheet.name, changed);
  }
  return edits;
}
