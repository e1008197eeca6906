/** A line of the table: what was compared, what it came to, and how much is allowed. */
export interface Measured {
  readonly work: string;
  readonly measured: number;
  readonly limit: number;
  readonly unit: string;
  readonly note: string;
}

const ROUNDS = 15;

/** Time of one run in milliseconds: the fastest of a few repeats in each round, the median of the rounds. */
export function medianTime(run: () => unknown, rounds = ROUNDS): number {
  run();
  return median(Array.from({ length: rounds }, () => time(run)));
}

/**
 * Time of `ours` over time of `theirs`, in alternation, so that whatever else the machine does meets both;
 * the median of the rounds.
 */
export function ratio(ours: () => unknown, theirs: () => unknown, rounds = ROUNDS): number {
  for (let warm = 0; warm < 5; warm += 1) {
    ours();
    theirs();
  }
  return median(Array.from({ length: rounds }, () => time(ours) / time(theirs)));
}

/** The slope of log time over log size: 1 where the work grows in proportion. */
export function growth(sizes: readonly number[], run: (size: number) => () => unknown): number {
  const points = sizes.map((size) => {
    const work = run(size);
    return [Math.log(size), Math.log(medianTime(work, 7))] as const;
  });
  const [meanX, meanY] = [0, 1].map((i) => mean(points.map((point) => point[i] as number)));
  const slope = points.map(([x, y]) => (x - (meanX as number)) * (y - (meanY as number)));
  const spread = points.map(([x]) => (x - (meanX as number)) ** 2);
  return mean(slope) / mean(spread);
}

/** The fastest of three: what the machine does beside can only add. */
function time(run: () => unknown): number {
  let fastest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i += 1) {
    const start = performance.now();
    sink = run();
    fastest = Math.min(fastest, performance.now() - start);
  }
  return fastest;
}

/** Keeps what was computed, so that no work can be left out as useless. */
export let sink: unknown;

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
