import type { BatchMeans } from "../batches/batch-means";
import { Groups, type Label } from "../batches/groups";

/**
 * Whether every block holds the levels in the proportion of the whole trial. Then block effects cancel out
 * of every difference between levels, and levels and blocks can be taken out one after the other.
 */
export function areComplete({ levels, blocks }: BatchMeans<Label>): boolean {
  const byLevel = new Groups(levels);
  const byBlock = new Groups(blocks);
  const counts = new Float64Array(byLevel.count * byBlock.count);
  byLevel.of.forEach((level, i) => {
    (counts[level * byBlock.count + (byBlock.of[i] as number)] as number)++;
  });
  const share = (place: number) =>
    ((byLevel.sizes[Math.floor(place / byBlock.count)] as number) *
      (byBlock.sizes[place % byBlock.count] as number)) /
    levels.length;
  return counts.every((count, place) => count === share(place));
}
