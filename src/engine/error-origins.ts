/**
 * Where the errors come from that formulas hand on. The engine's error values hold a kind and nothing else, one
 * object for all of a kind; here each has an object of its own, which functions pass on as they find it: sorted,
 * filtered or picked it still tells its cell.
 */
import type { Injector } from "@univerjs/core";
import type {
  ArrayValueObject,
  BaseValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-place";
import type { EngineFormula, ExecutorContext } from "./executor";
import type { Failure } from "./failures";
import type { Place } from "./structured";

/** The cell that an error was read from, or what is known of the failure in which it arose. */
export type Origin = CellPlace | Pick<Failure, "message" | "from">;

const origins = new WeakMap<object, Origin>();

export const originOf = (error: BaseValueObject): Origin | undefined => origins.get(error);

export function errorFrom(formula: EngineFormula, error: string, origin: Origin): BaseValueObject {
  const value = new formula.ErrorValueObject(error as never);
  origins.set(value, origin);
  return value;
}

/** The parts of the engine's runtime that turn an answer into cells; its types call one private. */
interface Results {
  setRuntimeData(answer: FunctionVariantType): void;
  _getValueObjectOfRuntimeData(value: FunctionVariantType | null): unknown;
}

/** Notes of every error that a formula leaves in a cell where it came from. */
export function followErrors(
  injector: Injector,
  { formula, failures, sheetName }: ExecutorContext,
): void {
  const runtime = injector.get(formula.IFormulaRuntimeService);
  const results = runtime as unknown as Results;
  const toCell = results._getValueObjectOfRuntimeData.bind(results);
  const keep = results.setRuntimeData.bind(results);
  let columns = 1;
  let cells = 0;
  let shown: Failure[] = [];

  // It is called once for each cell of an answer, row by row.
  results._getValueObjectOfRuntimeData = (value) => {
    const origin = value?.isError() ? originOf(value as BaseValueObject) : undefined;
    if (origin) {
      const error = String((value as BaseValueObject).getValue());
      const known =
        "sheetId" in origin ? { message: undefined, from: placeOf(origin, sheetName) } : origin;
      shown.push({ ...known, error, row: Math.floor(cells / columns), column: cells % columns });
    }
    cells++;
    return toCell(value);
  };

  results.setRuntimeData = (answer) => {
    columns = columnsOf(answer);
    cells = 0;
    shown = [];
    keep(answer);
    const { currentRow: row, currentColumn: column, currentSubUnitId: sheetId } = runtime;
    failures.show({ sheetId, row, column }, shown);
  };
}

export const placeOf = (
  { sheetId, row, column }: CellPlace,
  sheetName: ExecutorContext["sheetName"],
): Place => ({ sheet: sheetName(sheetId), row, column });

function columnsOf(answer: FunctionVariantType): number {
  if (!answer.isReferenceObject() && !(answer.isValueObject() && answer.isArray())) return 1;
  const { startColumn, endColumn } = (answer as ArrayValueObject).getRangePosition();
  return endColumn - startColumn + 1;
}
