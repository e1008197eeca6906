import { counted, figure } from "./figure";
import { impossible } from "./refusal";

/** A row or a column of numbers: an array or a typed array. */
export type Vector = ArrayLike<number>;

/** How far mass shares may miss 1 before they are taken for something else than shares. */
const SHARE_TOLERANCE = 0.005;

/** Refuses vectors of unequal length, naming both. `named` holds each vector, of numbers or names, under its own name. */
export function requireEqualLengths(
  named: Readonly<Record<string, { readonly length: number }>>,
): void {
  let firstName = "";
  let length = -1;
  // A balance over thousands of rows comes through here each time: no list of entries is made.
  for (const name in named) {
    const own = (named[name] as { readonly length: number }).length;
    if (length === -1) {
      firstName = name;
      length = own;
    } else if (own !== length) {
      impossible(
        `${firstName} has ${counted(length, "value")} and ${name} has ${own}. Give as many of both.`,
      );
    }
  }
}

/** Refuses mass shares that do not make a whole furnish, and says what they make. */
export function requireWholeFurnish(shares: Vector): void {
  const sum = sumOf(shares);
  if (!(Math.abs(sum - 1) <= SHARE_TOLERANCE)) {
    impossible(
      `The shares sum to ${figure(sum)}. Give mass shares that sum to 1 (within ${SHARE_TOLERANCE}).`,
    );
  }
}

/** The value at a place of a vector in which one number may stand for all places. */
export function oneOrEach(vector: Vector, place: number): number {
  return vector[vector.length === 1 ? 0 : place] as number;
}

export function sumOf(vector: Vector): number {
  let sum = 0;
  for (let i = 0; i < vector.length; i++) sum += vector[i] as number;
  return sum;
}

export function sumOfSquares(vector: Vector): number {
  return dot(vector, vector);
}

export function dot(one: Vector, other: Vector): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += (one[i] as number) * (other[i] as number);
  return sum;
}
