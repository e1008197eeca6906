import type { Vector } from "../model/vectors";

/** A value of a vector, at a place that it is known to have. */
export const at = (vector: Vector, i: number) => vector[i] as number;
