import type {
  BaseFunction,
  BaseReferenceObject,
  BaseValueObject,
  FormulaDataModel,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";

/** The engine's own function; what is used of it here its types call private. */
interface Aggregate {
  readonly _formulaDataModel?: FormulaDataModel;
  _handleSingleObject(
    what: BaseValueObject,
    option: BaseValueObject,
    cells: readonly FunctionVariantType[],
    isNoRange: boolean,
    ranges: readonly FunctionVariantType[],
  ): BaseValueObject;
}

/**
 * What the options from 0 to 7 leave out (the table at WorksheetFunction.Aggregate in Microsoft's reference). That
 * a row under a filter is a hidden row, so that 0, 2, 4 and 6 count it, is our reading: the table tells of none.
 */
const ignoresHidden = (option: number) => option % 2 === 1;
const ignoresErrors = (option: number) => option % 4 >= 2;
const ignoresNested = (option: number) => option < 4;

const nested = /\b(SUBTOTAL|AGGREGATE)\(/;

/**
 * AGGREGATE that leaves out what its option says, and no more. The engine's own never takes rows under a filter,
 * counts errors that are to be ignored, and fails by the error of a nested subtotal that is to be ignored.
 */
export function aggregateOf({ functionMath }: EngineFormula): BaseFunction {
  const [Native] = functionMath.find(([, name]) => name === "AGGREGATE") ?? [];
  if (typeof Native !== "function")
    throw new Error("The grid's engine has no AGGREGATE: see natives/aggregate.");
  const executor = new Native("AGGREGATE");
  const native = executor as unknown as Aggregate;
  const aggregate = native._handleSingleObject.bind(native);
  native._handleSingleObject = (what, given, cells, isNoRange) => {
    const option = Math.floor(Number(given.getValue()));
    const left = cells.map((one) =>
      one.isReferenceObject()
        ? leftBy(option, one as BaseReferenceObject, native._formulaDataModel)
        : one,
    );
    return aggregate(what, given, left, isNoRange, left);
  };
  return executor;
}

/** A range as the option has it be seen. */
function leftBy(
  option: number,
  range: BaseReferenceObject,
  model: FormulaDataModel | undefined,
): BaseReferenceObject {
  const isNested = (row: number, column: number) =>
    nested.test(
      model?.getFormulaStringByCell(row, column, range.getSheetId(), range.getUnitId()) ?? "",
    );
  const isLeftOut = (row: number, column: number) =>
    ignoresErrors(option) || (ignoresNested(option) && isNested(row, column));
  const view: Pick<BaseReferenceObject, "getFilteredOutRows" | "iterator"> = {
    getFilteredOutRows: () => (ignoresHidden(option) ? range.getFilteredOutRows() : []),
    iterator: (each) =>
      range.iterator((value, row, column) =>
        value?.isError() && isLeftOut(row, column) ? true : each(value, row, column),
      ),
  };
  return Object.assign(Object.create(range), view);
}
