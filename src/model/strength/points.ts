import { batchMeans } from "../batches/batch-means";
import { Groups, type Label } from "../batches/groups";
import { requireEqualLengths, type Vector } from "../vectors";

/** Independent points of a response: one a batch, each in the block that it was made in. */
export interface Points {
  readonly doses: Float64Array;
  readonly strengths: Float64Array;
  readonly blocks: Groups;
  /** Which points share a dose. */
  readonly repeats: Groups;
}

/** The points that a fit may count as independent: one a batch of sheets. */
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
  const means = batchMeans(doses, strengths, blocks, batches);
  return {
    doses: Float64Array.from(means.levels),
    strengths: means.values,
    blocks: new Groups(means.blocks),
    repeats: new Groups(means.levels),
  };
}
