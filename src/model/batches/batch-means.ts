import { Groups, type Label } from "./groups";

/** One independent value a batch, with the level (a dose, a name) and the block that the batch belongs to. */
export interface BatchMeans<L extends Label> {
  readonly values: Float64Array;
  readonly levels: readonly L[];
  readonly blocks: readonly Label[];
}

/**
 * Sheets to batches. Sheets of one batch (one make-up of treated stock) share its errors, so that they are
 * averaged to one value; without batches each value is a batch of its own. A batch has one level and one
 * block: the same label at another level or in another block is another batch, which lets batches be
 * numbered anew.
 */
export function batchMeans<L extends Label>(
  levels: ArrayLike<L>,
  values: ArrayLike<number>,
  blocks?: ArrayLike<Label>,
  batches?: ArrayLike<Label>,
): BatchMeans<L> {
  const sheets = {
    values: Float64Array.from(values),
    levels: Array.from(levels),
    blocks: Array.from(blocks ?? new Int8Array(levels.length)),
  };
  if (batches === undefined) return sheets;
  const made = new Groups(
    sheets.levels.map((level, i) => JSON.stringify([level, sheets.blocks[i], batches[i]])),
  );
  const sums = made.sums(sheets.values);
  const first = new Int32Array(made.count).fill(-1);
  made.of.forEach((batch, i) => {
    if ((first[batch] as number) < 0) first[batch] = i;
  });
  return {
    values: Float64Array.from(sums, (sum, batch) => sum / (made.sizes[batch] as number)),
    levels: Array.from(first, (i) => sheets.levels[i] as L),
    blocks: Array.from(first, (i) => sheets.blocks[i] as Label),
  };
}
