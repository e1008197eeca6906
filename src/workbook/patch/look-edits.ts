import type { Book, Cell, Cells, Sheet, Style } from "../book";
import type { CellEdit, LookEdit, SheetEdits, WorkbookEdits } from "./edits";

type LookBetween = (old: Cell | undefined, fresh: Cell | undefined) => LookEdit | undefined;

/** The edits of cells, and with them those of looks that differ from one book to the other and are none of the file's. */
export function withLooks(edits: WorkbookEdits, before: Book, after: Book): WorkbookEdits {
  const plain: Style = {};
  const texts = new Map(
    [plain, ...Object.values(before.styles), ...Object.values(after.styles)].map((style) => [
      style,
      JSON.stringify(Object.entries(style).sort()),
    ]),
  );
  const between: LookBetween = (old, fresh) => {
    if (fresh?.style === undefined || fresh.style in before.styles) return undefined;
    const was = before.styles[old?.style ?? ""] ?? plain;
    const is = after.styles[fresh.style] ?? plain;
    return texts.get(was) === texts.get(is) ? undefined : { before: was, after: is };
  };
  const all = new Map(edits);
  for (const sheet of before.sheets) {
    const fresh = after.sheets.find(({ name }) => name === sheet.name);
    const looked = fresh && sheetWithLooks(edits.get(sheet.name), sheet, fresh, between);
    if (looked && looked.size > 0) all.set(sheet.name, looked);
  }
  return all;
}

function sheetWithLooks(
  edits: SheetEdits = new Map(),
  before: Sheet,
  after: Sheet,
  between: LookBetween,
): SheetEdits {
  const all = new Map<number, ReadonlyMap<number, CellEdit>>(edits);
  for (const row of keysOf(before.cells, after.cells)) {
    const [old, fresh] = [lineOf(before.cells, row), lineOf(after.cells, row)];
    const line = new Map(all.get(row));
    for (const column of keysOf(old, fresh)) {
      const look = between(old[column], fresh[column]);
      if (look) line.set(column, { ...line.get(column), look });
    }
    if (line.size > 0) all.set(row, line);
  }
  return all;
}

const lineOf = (cells: Cells, row: number) => cells[row] ?? {};

const keysOf = (...all: readonly object[]): Set<number> =>
  new Set(all.flatMap((one) => Object.keys(one).map(Number)));
