import { errorCode } from "../../cells/cell";
import type { Call } from "../../cells/observer";
import type { SelectedCell, SheetHost } from "../../host/host";
import { placeOf } from "../../host/place";
import { parseAddress, sheetPrefix } from "../../workbook/address";
import { writtenCalls } from "./given";

/** A cell of an answer. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** The calls behind a cell. */
export interface FoundCalls {
  /** In the order in which they ended: the last is the outermost. */
  readonly calls: readonly Call[];
  /** The cell that holds the formula, and the formula. */
  readonly address: string;
  readonly formula: string;
  /** Which cell of the last answer the cell shows; undefined where the formula made something else of it. */
  readonly place: Place | undefined;
}

/** The calls behind a cell: its own, or those of the formula that spilled into it. */
export function findCalls(host: SheetHost, cell: SelectedCell): FoundCalls | undefined {
  const from = cell.spilledFrom ?? cell;
  const { address, formula } = from;
  const calls = written(host.callsAt(address), formula, host.namespace);
  const last = calls.at(-1);
  // Where no formula stands any more, its calls are of the past.
  if (last === undefined || formula === "") return undefined;
  const [own, first] = [partsOf(cell.address), partsOf(address)];
  const behind = { row: own.row - first.row, column: own.column - first.column };
  return { calls, address, formula, place: placeIn(last.answer, from.value, behind, cell.value) };
}

/**
 * The calls that the formula writes, as often as it writes them: others are of a formula that stood there
 * before, unless a name holds them.
 */
function written(calls: readonly Call[], formula: string, namespace: string): readonly Call[] {
  const ids = writtenCalls(formula, namespace).map(({ id }) => id);
  const timesWritten = (id: string) => ids.filter((one) => one === id).length;
  const present = calls.filter(({ id }, i) => {
    const later = calls.slice(i + 1).filter((call) => call.id === id).length;
    return later < timesWritten(id);
  });
  return present.length > 0 ? present : calls;
}

/**
 * Where in an answer a value stands that the sheet shows so many rows and columns behind the formula's own
 * cell. A formula may cut rows and columns off the answer: then its own value stands behind the first one,
 * and the others as far behind it as on the sheet.
 */
export function placeIn(
  answer: unknown,
  first: unknown,
  behind: Place,
  value: unknown,
): Place | undefined {
  const rows: readonly (readonly unknown[])[] = Array.isArray(answer) ? answer : [[answer]];
  let nearest: Place | undefined;
  rows.forEach((cells, row) => {
    cells.forEach((cell, column) => {
      if (nearest !== undefined && nearest.row + nearest.column <= row + column) return;
      const there = rows[row + behind.row]?.[column + behind.column];
      if (isShownAs(cell, first) && isShownAs(there, value)) nearest = { row, column };
    });
  });
  return nearest && { row: nearest.row + behind.row, column: nearest.column + behind.column };
}

const isShownAs = (cell: unknown, value: unknown) =>
  cell !== undefined && (cell === value || errorCode(cell) === value);

/** An address in parts; the sheet as a formula writes it before the cell. */
export function partsOf(address: string): Place & { readonly sheet: string } {
  const { sheet, cells } = placeOf(address);
  return {
    sheet: sheet === "" ? "" : sheetPrefix(sheet),
    ...parseAddress(cells.split(":")[0] as string),
  };
}
