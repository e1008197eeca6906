import { impossible } from "../model/refusal";
import type { Vector } from "./vector";

/** An argument that has a length, and its place among the values of the call. */
export interface Sized {
  readonly argument: Pick<Vector, "name" | "size" | "oneForAll">;
  readonly i: number;
}

/** How many values each place of a call holds; undefined where it was left out. */
type Lengths = (place: number) => number | undefined;

/**
 * Refuses vectors of one size that are not equally long, naming both. Asked before the cells are read: that a
 * range is too long says more than what its last cell holds.
 */
export function refuseUnequal(vectors: readonly Sized[], lengths: Lengths): void {
  for (const { argument, i } of vectors) {
    const own = lengths(i);
    const leader = leaderOf(argument, vectors, lengths);
    if (own === undefined || leader === undefined) continue;
    const length = lengths(leader.i) as number;
    if (own === length || (argument.oneForAll && own === 1)) continue;
    refuseLengths("value", [leader.argument.name, length], [argument.name, own]);
  }
}

type NamedLength = readonly [name: string, length: number];

export function refuseLengths(
  thing: "value" | "cell",
  [first, length]: NamedLength,
  [other, otherLength]: NamedLength,
): never {
  const things = length === 1 ? thing : `${thing}s`;
  impossible(
    `${first} has ${length} ${things} and ${other} has ${otherLength}. Give as many of both.`,
  );
}

/** The same for values that were read; where one number may stand for all, it is repeated in place. */
export function equalLengths(vectors: readonly Sized[], values: unknown[]): void {
  const lengths = (place: number) => (values[place] as readonly unknown[] | undefined)?.length;
  refuseUnequal(vectors, lengths);
  for (const { argument, i } of vectors) {
    const leader = leaderOf(argument, vectors, lengths);
    if (leader === undefined || lengths(i) !== 1) continue;
    const [one] = values[i] as readonly unknown[];
    values[i] = new Array<unknown>(lengths(leader.i) as number).fill(one);
  }
}

/** The first vector of a size, which the others follow: not one that may stand for all, and does. */
function leaderOf(
  { size }: Sized["argument"],
  vectors: readonly Sized[],
  lengths: Lengths,
): Sized | undefined {
  return vectors.find(({ argument, i }) => {
    const length = lengths(i);
    return argument.size === size && length !== undefined && !(argument.oneForAll && length === 1);
  });
}
