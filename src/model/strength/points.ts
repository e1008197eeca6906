import { requireEqualLengths, type Vector } from "../vectors";
import { Groups, type Label } from "./groups";

/** Independent points of a response: one a batch, each in the block that it was made in. */
export interface Points {
  readonly doses: Float64Array;
  readonly strengths: Float64Array;
  readonly blocks: Groups;
  /** Which points share a dose. */
  readonly repeats: Groups;
}

/**
 * The points that a fit may count as independent. Sheets of one batch (one make-up of treated stock) share
 * its errors, so that they are averaged to one point. A batch has one dose and one block: the same label
 * at another dose or in another block is another batch, which lets batches be numbered anew at each dose.
 */
export function independentPoints(
  doses: Vector,
  strengths: Vector,
  batches?: ArrayLike<Label>,
  blocks?: ArrayLike<Label>,
): Points {
  requireEqualLengths({
    doses,
    strengths,
    ...(batches && { batches }),
    ...(blocks && { blocks }),
  });
  const count = doses.length;
  const blockOf = (i: number): Label => blocks?.[i] ?? 0;
  if (batches === undefined) {
    return pointsOf(
      Float64Array.from(doses),
      Float64Array.from(strengths),
      blocks ?? new Float64Array(count),
    );
  }
  const made = new Groups(
    Array.from({ length: count }, (_, i) => JSON.stringify([doses[i], blockOf(i), batches[i]])),
  );
  const first = Array.from({ length: made.count }, (_, batch) => made.of.indexOf(batch));
  return pointsOf(
    Float64Array.from(first, (i) => doses[i] as number),
    made.sums(Float64Array.from(strengths)).map((sum, b) => sum / (made.sizes[b] as number)),
    first.map(blockOf),
  );
}

function pointsOf(doses: Float64Array, strengths: Float64Array, blocks: ArrayLike<Label>): Points {
  return { doses, strengths, blocks: new Groups(blocks), repeats: new Groups(doses) };
}
