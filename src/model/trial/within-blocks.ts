import { Groups, type Label } from "../batches/groups";
import { impossible } from "../refusal";
import { dot } from "../vectors";

/** How every level stands to the control, as the batches of the same block tell it. */
export interface WithinBlocks {
  /** By level: the difference from the control, whose own is 0. */
  readonly effects: ReadonlyMap<Label, number>;
  /** By level beside the control: the variance of its difference, in units of that of one batch. */
  readonly spreads: ReadonlyMap<Label, number>;
  /** Correlations of these differences, in the order of `spreads`. */
  readonly correlations: readonly (readonly number[])[];
}

/**
 * Least squares for value = level + block + error in blocks that need not hold every level. With the block
 * means taken out of values and levels, A·τ = q holds for the effects τ of the levels, where
 *   a_ij = r_i·δ_ij − Σ_b n_ib·n_jb/k_b,   q_i = Σ (value − mean of its block) over the batches of level i
 * (r batches of a level, k of a block, n of a level in a block). Without the control's row and column the
 * inverse of A holds the variances and covariances of the differences from the control.
 *
 * Source: F. Yates, Incomplete randomized blocks, Ann. Eugenics 7 (1936) 121–140 (intra-block analysis; from memory).
 */
export function withinBlocks(
  values: Float64Array,
  levels: readonly Label[],
  blocks: readonly Label[],
  control: Label,
): WithinBlocks {
  const treated = [...new Set(levels)].filter((level) => level !== control);
  refuseUntied(levels, blocks, control, treated);
  const byBlock = new Groups(blocks);
  const centred = Float64Array.from(values);
  byBlock.centre(centred);
  const columns = treated.map((level) => {
    const column = Float64Array.from(levels, (own) => (own === level ? 1 : 0));
    byBlock.centre(column);
    return column;
  });
  const inverse = inverted(columns.map((one) => columns.map((other) => dot(one, other))));
  const sides = columns.map((column) => dot(column, centred));
  const effects = inverse.map((row) => dot(row, sides));
  const spread = (i: number) => inverse[i]?.[i] as number;
  return {
    effects: new Map([
      [control, 0],
      ...treated.map((level, i) => [level, effects[i] as number] as const),
    ]),
    spreads: new Map(treated.map((level, i) => [level, spread(i)])),
    correlations: inverse.map((row, i) =>
      row.map((covariance, j) => covariance / Math.sqrt(spread(i) * spread(j))),
    ),
  };
}

/** A level that no chain of blocks ties to the control has no difference from it. */
function refuseUntied(
  levels: readonly Label[],
  blocks: readonly Label[],
  control: Label,
  treated: readonly Label[],
): void {
  const tied = new Set<Label>([control]);
  const reached = new Set<Label>();
  for (let before = -1; before < tied.size; ) {
    before = tied.size;
    for (const [i, level] of levels.entries()) if (tied.has(level)) reached.add(blocks[i] as Label);
    for (const [i, level] of levels.entries()) if (reached.has(blocks[i] as Label)) tied.add(level);
  }
  const untied = treated.find((level) => !tied.has(level));
  if (untied === undefined) return;
  const block = blocks[levels.indexOf(untied)];
  impossible(
    `Level ${untied} shares no block with the control ${control}, nor with a level that does. Make up a batch of ${control} in block ${block}, or leave out level ${untied}.`,
  );
}

/** The inverse of a symmetric positive matrix, by elimination, which needs no pivots there. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < size; k++) {
    const pivotRow = rows[k] as number[];
    const pivot = pivotRow[k] as number;
    for (let j = 0; j < 2 * size; j++) pivotRow[j] = (pivotRow[j] as number) / pivot;
    rows.forEach((row, i) => {
      const factor = row[k] as number;
      if (i === k || factor === 0) return;
      for (let j = 0; j < 2 * size; j++)
        row[j] = (row[j] as number) - factor * (pivotRow[j] as number);
    });
  }
  return rows.map((row) => row.slice(size));
}

const MOST_ROUNDS = 1000;
const CONVERGED = 1e-14;
/** A loading of 1 would leave nothing of its own to a difference. */
const LARGEST = Math.sqrt(1 - 1e-9);

/**
 * Loadings λ with correlations λ_i·λ_j as near to the given ones as least squares bring them, each found
 * from the others until none moves. Where blocks are whole, or one batch or a few are lost, they are met
 * exactly.
 *
 * Source: J. C. Hsu, The factor analytic approach to simultaneous inference in the general linear model,
 * J. Comput. Graph. Stat. 1 (1992) 151–168 (from memory).
 */
export function loadingsOf(correlations: readonly (readonly number[])[]): readonly number[] {
  const count = correlations.length;
  if (count === 1) return [0];
  const sum = correlations.flat().reduce((total, one) => total + one, 0) - count;
  const start = Math.sqrt(Math.max(sum / (count * (count - 1)), 0));
  const loadings = new Array<number>(count).fill(start);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = 0;
    for (let i = 0; i < count; i++) {
      const before = loadings[i] as number;
      let [along, length] = [0, 0];
      for (let j = 0; j < count; j++) {
        if (j === i) continue;
        const other = loadings[j] as number;
        along += (correlations[i]?.[j] as number) * other;
        length += other * other;
      }
      loadings[i] = length > 0 ? Math.min(along / length, LARGEST) : 0;
      moved = Math.max(moved, Math.abs((loadings[i] as number) - before));
    }
    if (moved < CONVERGED) break;
  }
  return loadings;
}
