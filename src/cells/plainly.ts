import type { Answer } from "./answer";
import type { Cell, Cells } from "./cell";
import { attempt, attemptFew, type Formula, isNoValue, NO_VALUE } from "./invoke";
import { observer } from "./observer";
import { accepts, type Quantity } from "./quantity";

type Call = (...given: unknown[]) => Answer;

/**
 * A sheet makes this call by the thousand: one sound number in each place, and nobody who watches. It is
 * answered here; whatever needs a closer look goes on to `otherwise`.
 */
export function plainly(quantities: readonly Quantity[], formula: Formula, otherwise: Call): Call {
  return quantities.length > FEW
    ? manyNumbers(quantities, formula, otherwise)
    : fewNumbers(quantities, formula, otherwise);
}

/** Most functions have no more arguments than these. */
const FEW = 4;

/** No list is made of the arguments: that would cost as much as the formula. Behind them stands the invocation. */
function fewNumbers(quantities: readonly Quantity[], formula: Formula, otherwise: Call): Call {
  const count = quantities.length;
  const [first, second, third, fourth] = quantities;
  return (a, b, c, d, e) => {
    if (observer === undefined) {
      const value = attemptFew(
        formula,
        count,
        plainNumber(first, a),
        plainNumber(second, b),
        plainNumber(third, c),
        plainNumber(fourth, d),
      );
      if (!isNoValue(value)) return [[value]];
    }
    return otherwise(a, b, c, d, e);
  };
}

function manyNumbers(quantities: readonly Quantity[], formula: Formula, otherwise: Call): Call {
  const values = quantities.map(() => 0.5);
  return (...given) => {
    if (observer === undefined) {
      let sound = true;
      for (let i = 0; sound && i < values.length; i += 1) {
        const value = plainNumber(quantities[i], given[i]);
        values[i] = value;
        sound = !isNoValue(value);
      }
      const value = sound ? attempt(formula, values) : NO_VALUE;
      if (!isNoValue(value)) return [[value]];
    }
    return otherwise(...given);
  };
}

/** The one sound number given for an argument, or NaN where it needs a closer look; 0 where there is no such argument. */
function plainNumber(quantity: Quantity | undefined, given: unknown): number {
  if (quantity === undefined) return 0;
  const cells = given as Cells | null | undefined;
  if (cells === null || cells === undefined) return quantity.fallback ?? NO_VALUE;
  if (cells.length !== 1) return NO_VALUE;
  const row = cells[0] as readonly Cell[];
  const cell = row[0];
  return row.length === 1 && accepts(quantity, cell) ? cell : NO_VALUE;
}
