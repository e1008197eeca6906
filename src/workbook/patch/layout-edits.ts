import type { Area, Book, Sheet } from "../book";
import type { Filter } from "../filter";
import type { LookEdit } from "./edits";

/** What becomes of a row or a column. */
export interface LineEdit {
  /** Width in characters, or height in points; null for the usual one. */
  readonly size?: number | null;
  readonly hidden?: boolean;
  /** Of a column: how its cells look in which nothing has stood yet. */
  readonly look?: LookEdit;
}

/** What becomes of a sheet around its cells. */
export interface LayoutEdits {
  readonly rows: ReadonlyMap<number, LineEdit>;
  readonly columns: ReadonlyMap<number, LineEdit>;
  readonly frozen?: NonNullable<Sheet["frozen"]>;
  readonly merged?: readonly Area[];
  readonly hidden?: boolean;
  /** Null where there is none any more. */
  readonly filter?: Filter | null;
}

type Sizes = Readonly<Record<number, number>>;

/** The sizes and the hidden lines of a sheet, before and after. */
interface LinesOf {
  readonly sizes: readonly [Sizes | undefined, Sizes | undefined];
  readonly hidden: readonly [readonly number[] | undefined, readonly number[] | undefined];
}

function lineEdits({ sizes, hidden }: LinesOf): Map<number, LineEdit> {
  const [oldSizes = {}, sizesNow = {}] = sizes;
  const [oldHidden, hiddenNow] = hidden.map((lines) => new Set(lines)) as [
    Set<number>,
    Set<number>,
  ];
  const lines = new Set([
    ...Object.keys({ ...oldSizes, ...sizesNow }).map(Number),
    ...oldHidden,
    ...hiddenNow,
  ]);
  const edits = new Map<number, LineEdit>();
  for (const line of lines) {
    const edit: LineEdit = {
      ...(oldSizes[line] !== sizesNow[line] && { size: sizesNow[line] ?? null }),
      ...(oldHidden.has(line) !== hiddenNow.has(line) && { hidden: hiddenNow.has(line) }),
    };
    if (Object.keys(edit).length > 0) edits.set(line, edit);
  }
  return edits;
}

/** The edits of columns, and with them those of the looks that columns have. */
function withColumnLooks(
  edits: ReadonlyMap<number, LineEdit>,
  [before, after]: readonly [Sheet, Sheet],
  [stylesBefore, stylesAfter]: readonly [Book["styles"], Book["styles"]],
): Map<number, LineEdit> {
  const all = new Map(edits);
  const [old = {}, fresh = {}] = [before.columnStyles, after.columnStyles];
  for (const column of Object.keys({ ...old, ...fresh }).map(Number)) {
    if (old[column] === fresh[column]) continue;
    const look = {
      before: stylesBefore[old[column] ?? ""] ?? {},
      after: stylesAfter[fresh[column] ?? ""] ?? {},
    };
    all.set(column, { ...all.get(column), look });
  }
  return all;
}

const nothingFrozen = { rows: 0, columns: 0 };

function sheetLayout(
  before: Sheet,
  after: Sheet,
  styles: readonly [Book["styles"], Book["styles"]],
): LayoutEdits | undefined {
  const differs = (one: unknown, other: unknown) => JSON.stringify(one) !== JSON.stringify(other);
  const edits: LayoutEdits = {
    rows: lineEdits({
      sizes: [before.rowHeights, after.rowHeights],
      hidden: [before.hiddenRows, after.hiddenRows],
    }),
    columns: withColumnLooks(
      lineEdits({
        sizes: [before.columnWidths, after.columnWidths],
        hidden: [before.hiddenColumns, after.hiddenColumns],
      }),
      [before, after],
      styles,
    ),
    ...(differs(before.frozen, after.frozen) && { frozen: after.frozen ?? nothingFrozen }),
    ...(differs(before.merged ?? [], after.merged ?? []) && { merged: after.merged ?? [] }),
    ...(differs(before.hidden, after.hidden) && { hidden: after.hidden ?? false }),
    ...(differs(before.filter, after.filter) && { filter: after.filter ?? null }),
  };
  const { rows, columns, ...others } = edits;
  return rows.size + columns.size + Object.keys(others).length > 0 ? edits : undefined;
}

/** What has to be done around the cells of one book so that it stands as another with the same sheets. */
export function layoutBetween(before: Book, after: Book): Map<string, LayoutEdits> {
  const edits = new Map<string, LayoutEdits>();
  for (const sheet of before.sheets) {
    const fresh = after.sheets.find(({ name }) => name === sheet.name);
    const changed = fresh && sheetLayout(sheet, fresh, [before.styles, after.styles]);
    if (changed) edits.set(sheet.name, changed);
  }
  return edits;
}
