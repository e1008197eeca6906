/**
 * Which rows a person means who selects a cell among them: the body of its table; or else the block of filled
 * cells around it, whole rows of it, without the lines that head it and the totals below.
 */
import { holdsCell } from "../../workbook/areas";
import type { Area, Book, Cell, Table } from "../../workbook/book";
import { isTotalOf } from "../../workbook/formula/totals";
import { bodyOf } from "../../workbook/layout/filled-in";

export interface SeenSheet {
  readonly name: string;
  readonly cells: ReadonlyMap<
    number,
    ReadonlyMap<number, Pick<Cell, "value" | "formula" | "spill">>
  >;
  readonly tables: readonly Table[];
  readonly frozenRows: number;
  readonly isBold: (row: number, column: number) => boolean;
}

export interface Block {
  readonly area: Area;
  /** The line above them that names their columns. */
  readonly head?: number;
  /** Of the column, as far as the rows have a head. */
  readonly title?: string;
}

interface Place {
  readonly row: number;
  readonly column: number;
}

/** Undefined where there is nothing at the cell. Several rows that are selected are taken alone. */
export function blockAt(sheet: SeenSheet, selected: Area, cell: Place): Block | undefined {
  const table = sheet.tables.find(({ area }) => holdsCell(area, cell.row, cell.column));
  if (table)
    return {
      area: bodyOf(table),
      ...(table.headerRow && {
        head: table.area.row,
        title: table.columns[cell.column - table.area.column] ?? "",
      }),
    };
  const region = regionAround(sheet, selected, cell);
  const rows = linesOf(region);
  if (!region || !rows.some((row) => filledIn(sheet, region, row).length > 0)) return undefined;
  const heads = headsOf(sheet, region);
  const body = { ...region, row: region.row + heads, rows: region.rows - heads };
  const whole = { ...body, rows: body.rows - totalsOf(sheet, body) };
  const above = rows.slice(0, heads);
  const head = above.find((row) => filledIn(sheet, region, row).length > 1) ?? above.at(-1);
  const title = head === undefined ? undefined : valueAt(sheet, head, cell.column);
  return {
    area: selected.rows > 1 ? rowsInBoth(whole, selected) : whole,
    ...(head !== undefined && { head }),
    ...(typeof title === "string" && { title }),
  };
}

const valueAt = ({ cells }: SeenSheet, row: number, column: number) =>
  cells.get(row)?.get(column)?.value ?? null;

export const isFilled = ({ cells }: SeenSheet, row: number, column: number) => {
  const { value, formula } = cells.get(row)?.get(column) ?? {};
  return formula !== undefined || (value !== undefined && value !== null && value !== "");
};

const count = (size: number, from: number) => Array.from({ length: size }, (_, at) => from + at);
export const linesOf = (area: Area | undefined) => (area ? count(area.rows, area.row) : []);
const columnsOf = ({ column, columns }: Area) => count(columns, column);

const filledIn = (sheet: SeenSheet, area: Area, row: number) =>
  columnsOf(area).filter((column) => isFilled(sheet, row, column));

function rowsInBoth(one: Area, other: Area): Area {
  const row = Math.max(one.row, other.row);
  const end = Math.min(one.row + one.rows, other.row + other.rows);
  return { ...one, row, rows: Math.max(0, end - row) };
}

/** Filled cells that touch, corners included; tables stand by themselves. */
function regionAround(sheet: SeenSheet, selected: Area, cell: Place): Area | undefined {
  const used = [...sheet.cells.keys()];
  const first = used.reduce((one, other) => Math.min(one, other), cell.row);
  const last = used.reduce((one, other) => Math.max(one, other), cell.row);
  const start = rowsInBoth(selected, { ...selected, row: first, rows: last - first + 1 });
  let [top, left] = [start.row, cell.column];
  let [bottom, right] = [top + start.rows - 1, cell.column];
  const filled = (row: number, column: number) =>
    isFilled(sheet, row, column) && !sheet.tables.some(({ area }) => holdsCell(area, row, column));
  const inRow = (row: number) =>
    count(right - left + 3, left - 1).some((column) => filled(row, column));
  const inColumn = (column: number) =>
    count(bottom - top + 3, top - 1).some((row) => filled(row, column));
  for (let before = ""; before !== `${[top, left, bottom, right]}`; ) {
    before = `${[top, left, bottom, right]}`;
    while (inRow(top - 1)) top--;
    while (inRow(bottom + 1)) bottom++;
    while (inColumn(left - 1)) left--;
    while (inColumn(right + 1)) right++;
  }
  return { row: top, rows: bottom - top + 1, column: left, columns: right - left + 1 };
}

/**
 * How many lines head the block: those that stay in view; or those, titles and units, that hold no number while
 * one at least holds a word over numbers; or one that alone is bold.
 */
function headsOf(sheet: SeenSheet, region: Area): number {
  const frozen = sheet.frozenRows - region.row;
  if (frozen > 0 && frozen < region.rows) return frozen;
  const ofType = (type: string, row: number, column: number) =>
    typeof valueAt(sheet, row, column) === type;
  const rows = linesOf(region);
  const lower = rows.slice(Math.floor(rows.length / 2));
  const numeric = columnsOf(region).filter(
    (column) =>
      lower.filter((row) => ofType("number", row, column)).length >
      lower.filter((row) => ofType("string", row, column)).length,
  );
  let heads = 0;
  for (const row of rows.slice(0, -1)) {
    if (!filledIn(sheet, region, row).every((column) => ofType("string", row, column))) break;
    if (numeric.some((column) => isFilled(sheet, row, column))) heads = row - region.row + 1;
  }
  if (heads > 0 || numeric.length > 0) return heads;
  const allBold = (row: number) =>
    filledIn(sheet, region, row).every((column) => sheet.isBold(row, column));
  return region.rows > 1 && allBold(region.row) && !allBold(region.row + 1) ? 1 : 0;
}

/** How many last lines compute from several cells above them in their own column. */
function totalsOf(sheet: SeenSheet, body: Area): number {
  const book = bookOf(sheet);
  const sums = (row: number) =>
    columnsOf(body).some((column) => {
      const formula = sheet.cells.get(row)?.get(column)?.formula;
      const above = { ...body, column, columns: 1, rows: row - body.row };
      const place = { sheet: sheet.name, row, column };
      return formula !== undefined && isTotalOf(above, formula, place, book);
    });
  const rows = linesOf(body).reverse();
  const totals = rows.findIndex((row) => !sums(row));
  return Math.max(totals, 0);
}

/** As far as the cells that formulas read depend on it: its tables, and what its formulas fill. */
export function bookOf({ name, cells, tables }: SeenSheet): Book {
  const filling = [...cells].map(([row, line]) => [
    row,
    Object.fromEntries([...line].filter(([, { spill }]) => spill)),
  ]);
  const sheets = [{ name, cells: Object.fromEntries(filling) }];
  return { sheets, definedNames: [], tables, styles: {} };
}
