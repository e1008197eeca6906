/** The workbook as it stands in the grid, as one of ours: what is saved is what is seen. */
import type { ICellData, Nullable, Workbook, Worksheet } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import { type FormulaDataModel, IDefinedNamesService } from "@univerjs/engine-formula";
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from "@univerjs/sheets";
import { nameFromGrid } from "../../engine/dialect";
import { areaOf } from "../../engine/ranges";
import { type ReadCell, readCells } from "../../engine/read-cells";
import { type SpellOut, spellingOut, type Vocabulary } from "../../engine/spelled-out";
import { NAMESPACE } from "../../help/reference";
import { holdsCell } from "../../workbook/areas";
import {
  type Book,
  type DefinedName,
  type Extent,
  type GrowingCells,
  putCell,
  type Sheet,
  type Style,
  type Table,
} from "../../workbook/book";
import { charactersOfPixels } from "../../workbook/column-width";
import { answersWithBlock } from "../../workbook/formula/future-functions";
import { type Grid, workbookOf } from "../grid/grid";
import {
  type Carried,
  type CarriedByLine,
  pointsOfPixels,
  USUAL_COLUMN_WIDTH,
  USUAL_ROW_HEIGHT,
} from "./grid-book";
import { styleOf } from "./looks";
import { writtenFormula } from "./written-formula";

type ReadCells = Map<number, Map<number, ReadCell>>;

export function readGrid(
  workbook: Workbook,
  model: FormulaDataModel,
  { definedNames, tables }: Vocabulary,
): Book {
  const spellOut = spellingOut({ definedNames, tables });
  const styles = new StyleBook(workbook);
  const sheets = workbook.getSheets().map((worksheet) => {
    const cells = readCells(model, worksheet);
    const inSheet = tables.filter(({ sheet }) => sheet === worksheet.getName());
    return sheetOf(worksheet, cells, inSheet, spellOut, styles);
  });
  return { sheets, definedNames, tables, styles: styles.all };
}

export const belongsToSheet = ({ sheet }: DefinedName): boolean => sheet !== undefined;

/** The names of the workbook that is open, each with the sheet where alone it is known. */
export function namesOf(grid: Grid): DefinedName[] {
  const workbook = workbookOf(grid);
  if (!workbook) return [];
  const names = grid.injector.get(IDefinedNamesService).getDefinedNameMap(workbook.getUnitId());
  return Object.values(names ?? {}).map(({ name, formulaOrRefString, localSheetId }) => {
    const local = localSheetId !== SCOPE_WORKBOOK_VALUE_DEFINED_NAME && localSheetId;
    const sheet = local ? workbook.getSheetBySheetId(local)?.getName() : undefined;
    const formula = nameFromGrid(formulaOrRefString);
    return { name, formula, ...(sheet === undefined ? {} : { sheet }) };
  });
}

/** Gives every look that cells have a key: the one that it came with, or one for all that were made alike. */
class StyleBook {
  readonly all: Record<string, Style> = {};
  readonly #made = new Map<string, string>();

  constructor(private readonly workbook: Workbook) {}

  keyOf(cell: Nullable<Pick<ICellData, "s">>): string | undefined {
    const data = cell && this.workbook.getStyles().getStyleByCell(cell);
    if (!cell || !data) return undefined;
    const style = styleOf(data);
    const key = typeof cell.s === "string" ? cell.s : this.#madeKey(JSON.stringify(style));
    if (key !== undefined) this.all[key] = style;
    return key;
  }

  #madeKey(look: string): string | undefined {
    if (look === "{}") return undefined;
    const key = this.#made.get(look) ?? `look-${this.#made.size}`;
    this.#made.set(look, key);
    return key;
  }
}

function sheetOf(
  worksheet: Worksheet,
  read: ReadCells,
  tables: readonly Table[],
  spellOut: SpellOut,
  styles: StyleBook,
): Sheet {
  const name = worksheet.getName();
  const cells: GrowingCells = {};
  for (const [row, line] of read)
    for (const [column, cell] of line) {
      const style = styles.keyOf(cell.data);
      const formula = writtenFormula(cell, spellOut, { sheet: name, row, column });
      if (cell.value === null && formula === undefined && style === undefined) continue;
      putCell(cells, row, column, {
        value: cell.value,
        ...(formula !== undefined && { formula }),
        ...(formula !== undefined && spillOf(cell, formula, inTable(tables, row, column))),
        ...(cell.from && { spilled: true }),
        ...(style !== undefined && { style }),
      });
    }
  const columnStyles = ofLines(worksheet.getConfig().columnData, ({ custom }) =>
    styles.keyOf({ s: (custom as CarriedByLine | undefined)?.look }),
  );
  return {
    name,
    cells,
    ...frameOf(worksheet),
    ...(Object.keys(columnStyles).length > 0 && { columnStyles }),
  };
}

export type SheetFrame = Omit<Sheet, "name" | "cells">;

/** What stands around the cells of a sheet, as it is seen. */
export function frameOf(worksheet: Worksheet): SheetFrame {
  const config = worksheet.getConfig();
  const columnWidths = ofLines(config.columnData, ({ w }) =>
    w === undefined || w === USUAL_COLUMN_WIDTH ? undefined : charactersOfPixels(w),
  );
  const rowHeights = ofLines(config.rowData, ({ h, ia }) =>
    h === undefined || ia !== 0 || h === USUAL_ROW_HEIGHT ? undefined : pointsOfPixels(h),
  );
  const { xSplit, ySplit } = config.freeze;
  const hiddenRows = hiddenLines(config.rowData, (row) => worksheet.getRowFiltered(row));
  const hiddenColumns = hiddenLines(config.columnData);
  return {
    columnWidths,
    rowHeights,
    ...(hiddenRows.length > 0 && { hiddenRows }),
    ...(hiddenColumns.length > 0 && { hiddenColumns }),
    ...((xSplit || ySplit) && { frozen: { rows: ySplit, columns: xSplit } }),
    merged: config.mergeData.map(areaOf),
    ...(config.hidden === BooleanNumber.TRUE && { hidden: true }),
  };
}

/**
 * An answer of one cell spills too, where the formula came as a dynamic array, calls one of our functions
 * or answers with a block: a plain formula would show with a mark in front of it, and its first value only.
 * In a table nothing spills.
 */
function spillOf(cell: ReadCell, formula: string, tabled: boolean): { spill?: Extent } {
  if (cell.spill) return { spill: cell.spill };
  const { dynamic } = (cell.data?.custom ?? {}) as Carried;
  const ours = formula.toUpperCase().includes(`${NAMESPACE}.`);
  const spills = !tabled && (ours || answersWithBlock(formula));
  return dynamic || spills ? { spill: { rows: 1, columns: 1 } } : {};
}

const inTable = (tables: readonly Table[], row: number, column: number) =>
  tables.some(({ area }) => holdsCell(area, row, column));

/** What lines have that have it. */
function ofLines<T, Its>(
  entries: Readonly<Record<number, Nullable<T>>>,
  its: (entry: T) => Its | undefined,
): Record<number, Its> {
  const found: Record<number, Its> = {};
  for (const [index, entry] of Object.entries(entries)) {
    const value = entry ? its(entry) : undefined;
    if (value !== undefined) found[Number(index)] = value;
  }
  return found;
}

type Hideable = { readonly hd?: BooleanNumber };

const hiddenLines = (
  entries: Readonly<Record<number, Nullable<Hideable>>>,
  isFiltered: (line: number) => boolean = () => false,
): number[] =>
  Object.keys(entries)
    .map(Number)
    .filter((line) => entries[line]?.hd === BooleanNumber.TRUE || isFiltered(line));
