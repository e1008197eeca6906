import type { BatchMeans } from "../batches/batch-means";
import { Groups, type Label } from "../batches/groups";
import { figure } from "../figure";
import { impossible } from "../refusal";

/**
 * Refuses blocks in which the levels do not stand in the proportion of the whole trial. Where they do,
 * block effects cancel out of every difference between levels, and levels and blocks can be taken out one
 * after the other.
 */
export function requireCompleteBlocks({ levels, blocks }: BatchMeans<Label>): void {
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
      ? `Block ${block} has no batch of level ${level}. Make it up, or leave out that block or that level.`
      : `Level ${level} has ${counts[wrong]} of the batches of block ${block}, and its share would be ${figure(share(wrong))}. Give blocks that hold the levels in the same proportion.`,
  );
}
