import { counted, figure } from "../figure";
import { impossible, noAnswer } from "../refusal";
import { requireEqualLengths } from "../vectors";

/** How strongly a result goes with one of its inputs. */
export interface Driver {
  readonly input: number | string;
  readonly rankCorrelation: number;
  readonly share: number;
}

const FEWEST = 3;

/**
 * Which inputs drive a result, largest first, by Spearman's rank correlation with mid-ranks for ties. It
 * sees any monotone relation, straight or not.
 *
 * The share of the spread is the squared rank correlation: what the input alone explains of the spread of
 * the result's ranks. Shares of independent inputs sum to 1 at most, and what is missing is explained by
 * no input alone. Inputs that go together claim the same spread twice: where the squares sum to more than
 * 1, they are scaled to 1. An input that never changes drives nothing.
 *
 * Source: C. Spearman, Am. J. Psychol. 15 (1904) 72–101; M. G. Kendall, Biometrika 33 (1945) 239–251, for
 * ties.
 */
export function drivers(
  results: readonly number[],
  inputs: readonly (readonly number[])[],
  names: readonly (number | string)[] = inputs.map((_, i) => `input ${i + 1}`),
): Driver[] {
  if (results.length < FEWEST) {
    impossible(`The number of results is ${results.length}. Give at least ${FEWEST}.`);
  }
  for (const input of inputs) requireEqualLengths({ results, "each input": input });
  if (names.length !== inputs.length) {
    impossible(
      `inputs has ${counted(inputs.length, "column")} and names has ${counted(names.length, "name")}. Give a name for each column.`,
    );
  }
  const ranks = centredRanks(results);
  if (ranks.every((rank) => rank === 0)) {
    noAnswer(
      `Every result is ${figure(results[0] as number)}, so that nothing drives it. Give results that vary.`,
    );
  }
  const correlations = inputs.map((input) => correlation(centredRanks(input), ranks));
  const explained = correlations.reduce((sum, value) => sum + value * value, 0);
  const scale = Math.max(explained, 1);
  return correlations
    .map((value, i) => ({
      input: names[i] as number | string,
      rankCorrelation: value,
      share: (value * value) / scale,
    }))
    .sort((a, b) => b.share - a.share);
}

/** Ranks about their mean; equal values share the middle of the ranks that they take up. */
function centredRanks(values: readonly number[]): Float64Array {
  const order = Uint32Array.from(values.keys()).sort(
    (a, b) => (values[a] as number) - (values[b] as number),
  );
  const value = (place: number) => values[order[place] as number];
  const ranks = new Float64Array(values.length);
  for (let start = 0; start < order.length; ) {
    let end = start + 1;
    while (end < order.length && value(end) === value(start)) end++;
    const middle = (start + end - order.length) / 2;
    for (let place = start; place < end; place++) ranks[order[place] as number] = middle;
    start = end;
  }
  return ranks;
}

function correlation(a: Float64Array, b: Float64Array): number {
  const product = (x: Float64Array, y: Float64Array) =>
    x.reduce((sum, value, i) => sum + value * (y[i] as number), 0);
  const spread = Math.sqrt(product(a, a) * product(b, b));
  return spread === 0 ? 0 : product(a, b) / spread;
}
