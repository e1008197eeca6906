import { figure } from "../figure";
import { impossible } from "../refusal";
import { Groups, type Label } from "./groups";

/** One independent value a batch, with the level and the block that the batch belongs to. */
export interface BatchMeans {
  readonly values: Float64Array;
  readonly levels: readonly Label[];
  readonly blocks: readonly Label[];
}

/**
 * Sheets to batches. Sheets of one batch share its errors and are averaged to one value; without batches
 * each value is a batch of its own. A batch has one level and one block: the same label at another level
 * or in another block is another batch, so that batches may be numbered anew.
 */
export function batchMeans(
  levels: readonly Label[],
  values: readonly number[],
  blocks: readonly Label[] | undefined,
  batches: readonly Label[] | undefined,
): BatchMeans {
  const all = blocks ?? new Array<Label>(levels.length).fill(1);
  if (batches === undefined) return { values: Float64Array.from(values), levels, blocks: all };
  const made = new Groups(levels.map((level, i) => JSON.stringify([level, all[i], batches[i]])));
  const sums = made.sums(Float64Array.from(values));
  const first = new Int32Array(made.count).fill(-1);
  made.of.forEach((batch, i) => {
    if ((first[batch] as number) < 0) first[batch] = i;
  });
  return {
    values: sums.map((sum, batch) => sum / (made.sizes[batch] as number)),
    levels: Array.from(first, (i) => levels[i] as Label),
    blocks: Array.from(first, (i) => all[i] as Label),
  };
}

/**
 * Refuses blocks in which the levels do not stand in the proportion of the whole trial. Where they do,
 * block effects cancel out of every difference between levels, and levels and blocks can be taken out one
 * after the other.
 */
export function requireCompleteBlocks({ levels, blocks }: BatchMeans): void {
  const byLevel = new Groups(levels);
  const byBlock = new Groups(blocks);
  const counts = new Float64Array(byLevel.count * byBlock.count);
  byLevel.of.forEach((level, i) => {
    (counts[level * byBlock.count + (byBlock.of[i] as number)] as number)++;
  });
  const levelOf = (place: number) => Math.floor(place / byBlock.count);
  const blockOf = (place: number) => place % byBlock.count;
  const share = (place: number) =>
    ((byLevel.sizes[levelOf(place)] as number) * (byBlock.sizes[blockOf(place)] as number)) /
    levels.length;

  const missing = counts.indexOf(0);
  const wrong = missing >= 0 ? missing : counts.findIndex((count, place) => count !== share(place));
  if (wrong < 0) return;
  const level = levels[byLevel.of.indexOf(levelOf(wrong))];
  const block = blocks[byBlock.of.indexOf(blockOf(wrong))];
  impossible(
    wrong === missing
      ? `Block ${block} has no batch of level ${level}. Give blocks that hold every level.`
      : `Level ${level} has ${counts[wrong]} of the batches of block ${block}, and its share would be ${figure(share(wrong))}. Give blocks that hold the levels in the same proportion.`,
  );
}
