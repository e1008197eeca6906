/**
 * XLOOKUP and CHOOSE give the cells themselves that they find, so that they may stand at either end of a range:
 * XLOOKUP(…):XLOOKUP(…). The engine's own XLOOKUP gives their values, and takes a cell that holds an error for
 * none; its CHOOSE takes a range for one cell where it chooses by a list: VLOOKUP(x,CHOOSE({1,2},…),2).
 */
import type {
  ArrayValueObject,
  BaseFunction,
  BaseReferenceObject,
  BaseValueObject,
} from "@univerjs/engine-formula";
import type { Extent } from "../../workbook/book";
import type { EngineFormula } from "../executor";
import { arrayOf, elementwise, rowsOf } from "./elementwise";

type Calculate = BaseFunction["calculate"];
type Variant = BaseValueObject | BaseReferenceObject;

const valuesOf = (variant: Variant): BaseValueObject =>
  variant.isReferenceObject()
    ? (variant as BaseReferenceObject).toArrayValueObject()
    : (variant as BaseValueObject);

function sizeOf(value: BaseValueObject): Extent {
  const array = value as ArrayValueObject;
  return value.isArray()
    ? { rows: array.getRowCount(), columns: array.getColumnCount() }
    : { rows: 1, columns: 1 };
}

const isOne = ({ rows, columns }: Extent) => rows === 1 && columns === 1;

export function chooseOf(formula: EngineFormula): BaseFunction {
  const wrong = () => formula.ErrorValueObject.create(formula.ErrorType.VALUE);

  const chosen = (index: BaseValueObject, choices: readonly BaseValueObject[]) => {
    const place = index.isError() ? index : index.convertToNumberObjectValue();
    if (place.isError()) return place;
    return choices[Math.trunc(Number(place.getValue())) - 1] ?? wrong();
  };

  class Choose extends formula.BaseFunction {
    override needsReferenceObject = true;
    override minParams = 2;
    override maxParams = 255;

    override calculate(...variants: BaseValueObject[]): BaseValueObject {
      const [index, ...choices] = variants as [BaseValueObject, ...BaseValueObject[]];
      const places = valuesOf(index);
      if (isOne(sizeOf(places)))
        return chosen(rowsOf(formula, places)[0]?.[0] as BaseValueObject, choices);
      return elementwise(formula, [places, ...choices.map(valuesOf)], (place, ...values) =>
        chosen(place as BaseValueObject, values),
      );
    }
  }

  return new Choose("CHOOSE");
}

/** IF with one condition gives what it takes, cells as cells; with several it goes through values. */
function givingCells(executor: BaseFunction, calculate: Calculate): Calculate {
  executor.needsReferenceObject = true;
  return (...variants) => {
    const [condition, ...choices] = variants as [BaseValueObject, ...BaseValueObject[]];
    const test = valuesOf(condition);
    return isOne(sizeOf(test))
      ? calculate(test, ...choices)
      : calculate(test, ...choices.map(valuesOf));
  };
}

/** The engine's XLOOKUP, asked for the place of what it finds among the cells to give. */
function lookingUpCells(
  formula: EngineFormula,
  executor: BaseFunction,
  calculate: Calculate,
): Calculate {
  const { NumberValueObject } = formula;
  const lookUp = calculate as (...values: BaseValueObject[]) => BaseValueObject;
  let places = arrayOf(formula, [[NumberValueObject.create(1)]]);

  /** 1, 2, 3… in as many rows or columns. */
  const placesIn = ({ rows, columns }: Extent): ArrayValueObject => {
    if (places.getRowCount() !== rows || places.getColumnCount() !== columns)
      places = arrayOf(
        formula,
        Array.from({ length: rows }, (_, row) =>
          Array.from({ length: columns }, (_, column) =>
            NumberValueObject.create(1 + row + column),
          ),
        ),
      );
    return places;
  };

  executor.needsReferenceObject = true;
  return (...variants) => {
    const values = (variants as Variant[]).map(valuesOf);
    const [sought, within, given, missing, ...modes] = values as [
      BaseValueObject,
      BaseValueObject,
      BaseValueObject,
      ...BaseValueObject[],
    ];
    const line = sizeOf(within);
    const found = sizeOf(given);
    const down = line.columns === 1 && line.rows === found.rows;
    const across = line.rows === 1 && line.columns === found.columns;
    const from = variants[2] as unknown as BaseReferenceObject;
    if (!isOne(sizeOf(sought)) || !from.isReferenceObject() || !(down || across))
      return lookUp(...values);
    const place = lookUp(sought, within, placesIn(line), NumberValueObject.create(0), ...modes);
    if (place.isError()) return place;
    const at = Number(place.getValue()) - 1;
    if (at < 0)
      return missing && !missing.isNull()
        ? (variants[3] as BaseValueObject)
        : formula.ErrorValueObject.create(formula.ErrorType.NA);
    const { startRow, startColumn, endRow, endColumn } = from.getRangePosition();
    const range = down
      ? { startRow: startRow + at, endRow: startRow + at, startColumn, endColumn }
      : { startRow, endRow, startColumn: startColumn + at, endColumn: startColumn + at };
    return executor.createReferenceObject(from, range) as BaseValueObject;
  };
}

/** The function with its cells handed on as cells, where it would give their values only. */
export function handingCellsOn(
  formula: EngineFormula,
  executor: BaseFunction,
  calculate: Calculate,
): Calculate {
  if (executor.name === "IF") return givingCells(executor, calculate);
  if (executor.name === "XLOOKUP") return lookingUpCells(formula, executor, calculate);
  return calculate;
}
