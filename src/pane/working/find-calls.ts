import type { Call } from "../../cells/observer";
import type { SheetCell, SheetHost } from "../../host/host";
import { placeOf } from "../../host/place";
import { addressOf, parseAddress, sheetPrefix } from "../../workbook/address";
import { writtenCalls } from "./given";

/** A call, and which cell of its answer is looked at. */
export interface FoundCalls {
  readonly calls: readonly Call[];
  /** The cell that holds the formula. */
  readonly address: string;
  readonly row: number;
  readonly column: number;
}

/** How far up and to the left a formula is looked for whose answer may have spilled into a cell. */
const FARTHEST_ROW = 2000;
const FARTHEST_COLUMN = 20;

/** The calls behind a cell: its own, or those of the formula that spilled into it. */
export function findCalls(host: SheetHost, cell: SheetCell): FoundCalls | undefined {
  const own = written(host.callsAt(cell.address), cell.formula, host.namespace);
  if (own.length > 0) return { calls: own, address: cell.address, row: 0, column: 0 };
  if (cell.formula !== "" || cell.value === null) return undefined;
  const { sheet, row, column } = partsOf(cell.address);
  for (let across = 0; across <= Math.min(FARTHEST_COLUMN, column); across++) {
    for (let down = 0; down <= Math.min(FARTHEST_ROW, row); down++) {
      const address = `${sheet}${addressOf(row - down, column - across)}`;
      const calls = host.callsAt(address);
      if (calls.some((call) => spills(call, down, across, cell.value))) {
        return { calls, address, row: down, column: across };
      }
    }
  }
  return undefined;
}

/** The calls that the formula writes: others are of a formula that stood there before, unless a name holds them. */
function written(calls: readonly Call[], formula: string, namespace: string): readonly Call[] {
  const ids = writtenCalls(formula, namespace).map(({ id }) => id);
  const present = calls.filter(({ id }) => ids.includes(id));
  return present.length > 0 ? present : calls;
}

/** Whether an answer reaches as far as that, and holds there what the cell shows. */
function spills(call: Call, down: number, across: number, value: unknown): boolean {
  if (!Array.isArray(call.answer)) return false;
  const cell: unknown = call.answer[down]?.[across];
  return cell !== undefined && (cell === value || typeof cell === "object");
}

/** An address in parts; the sheet as a formula writes it before the cell. */
export function partsOf(address: string): {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
} {
  const { sheet, cells } = placeOf(address);
  return {
    sheet: sheet === "" ? "" : sheetPrefix(sheet),
    ...parseAddress(cells.split(":")[0] as string),
  };
}
