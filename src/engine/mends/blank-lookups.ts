import type { ArrayValueObject, BaseValueObject } from "@univerjs/engine-formula";
import type { EngineFormula } from "../executor";

/** A look-up of 0 or of the empty text passes blank cells over: the engine would stop at the first. */
export function mendBlankLookups({ ArrayValueObject, BooleanValueObject }: EngineFormula): void {
  const prototype = ArrayValueObject.prototype;
  const compared = prototype.isEqual;

  prototype.isEqual = function (this: ArrayValueObject, value: BaseValueObject) {
    const found = compared.call(this, value);
    if (value.isArray() || value.isError() || value.getValue()) return found;
    return (found as ArrayValueObject).mapValue((verdict, row, column) =>
      this.get(row, column)?.isNull() ? BooleanValueObject.create(false) : verdict,
    );
  };
}
