import { counted } from "../figure";
import { Random, STREAM } from "../numerics/random";
import { impossible } from "../refusal";

/** A run of the trial: its block, its place in the whole order, its dose. */
export type Run = [block: number, run: number, dose: number];

const MOST_RUNS = 100_000;

/**
 * Randomised complete blocks: every dose once in each block, each block in an order of its own. What
 * drifts through the day (stock, water, operator) then falls on all doses alike.
 *
 * Source: R. A. Fisher, The Design of Experiments (1935).
 */
export function runOrder(doses: readonly number[], replicates: number, seed: number): Run[] {
  const runs = doses.length * replicates;
  if (runs > MOST_RUNS) {
    impossible(
      `${counted(doses.length, "dose")} in ${counted(replicates, "block")} make ${runs} runs. Give at most ${MOST_RUNS} runs.`,
    );
  }
  const random = new Random(seed, STREAM.runOrder);
  return Array.from({ length: replicates }, (_, block) => {
    const order = [...doses];
    random.shuffle(order);
    return order.map((dose, i): Run => [block + 1, block * doses.length + i + 1, dose]);
  }).flat();
}
