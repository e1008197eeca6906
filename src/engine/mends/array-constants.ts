import type { BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";

/** The part of an array that reads {1,"a";2,"b"}; its types call it private. */
interface ArrayReader {
  _formatValue(raw: unknown): BaseValueObject[][];
  _rowCount: number;
  _columnCount: number;
}

/** A text, a sign between elements, or what else stands between signs. */
const pieces = /"(?:[^"]|"")*"|[,;]|[^,;"]+/g;

/**
 * The engine cuts an array at every comma and semicolon, those inside a text included, and takes the text
 * "3%" in one for a number: {"a,b"} would have two elements.
 */
export function mendArrayConstants(formula: EngineFormula): void {
  const prototype = formula.ArrayValueObject.prototype as unknown as ArrayReader;
  if (typeof prototype._formatValue !== "function")
    throw new Error("The grid's engine reads arrays in another way: see mends/array-constants.");
  const read = prototype._formatValue;

  prototype._formatValue = function (this: ArrayReader, raw) {
    if (typeof raw !== "string" || !raw.includes('"')) return read.call(this, raw);
    const rows: string[][] = [[""]];
    for (const [piece] of raw.slice(1, -1).matchAll(pieces)) {
      const row = rows.at(-1) as string[];
      if (piece === ",") row.push("");
      else if (piece === ";") rows.push([""]);
      else row[row.length - 1] += piece;
    }
    this._rowCount = rows.length;
    this._columnCount = Math.max(...rows.map((row) => row.length));
    return rows.map((row) =>
      row.map(
        (element) => formula.ValueObjectFactory.create(element.trim(), true) as BaseValueObject,
      ),
    );
  };
}
