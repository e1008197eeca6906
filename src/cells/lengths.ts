import { impossible } from "../model/refusal";
import type { Vector } from "./vector";

/** An argument that has a length, and its place among the values of the call. */
export interface Sized {
  readonly argument: Pick<Vector, "name" | "size" | "oneForAll">;
  readonly i: number;
}

/**
 * Vectors of one size must be equally long; where one number may stand for all, it is repeated.
 * Works in place on the values that were read.
 */
export function equalLengths(vectors: readonly Sized[], values: unknown[]): void {
  for (const { argument, i } of vectors) {
    const value = values[i] as readonly unknown[] | undefined;
    const leader = vectors.find(
      (other) =>
        other.argument.size === argument.size &&
        values[other.i] !== undefined &&
        !(other.argument.oneForAll && (values[other.i] as readonly unknown[]).length === 1),
    );
    if (value === undefined || leader === undefined || leader.i === i) continue;
    const length = (values[leader.i] as readonly unknown[]).length;
    if (value.length === length) continue;
    if (argument.oneForAll && value.length === 1) {
      values[i] = new Array<unknown>(length).fill(value[0]);
    } else {
      impossible(
        `${leader.argument.name} has ${length} values and ${argument.name} has ${value.length}. Give as many of both.`,
      );
    }
  }
}
