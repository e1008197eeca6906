/** A name or a number that tells a batch, a block or a dose from the others. */
export type Label = number | string;

/** Which items belong together, with the sweep that takes each group's mean out of a set of values. */
export class Groups {
  readonly count: number;
  /** The group of each item, numbered in the order in which the labels first appear. */
  readonly of: Int32Array;
  readonly sizes: Float64Array;
  private readonly means: Float64Array;

  constructor(labels: ArrayLike<Label>) {
    const numbers = new Map<Label, number>();
    this.of = new Int32Array(labels.length);
    for (let item = 0; item < labels.length; item++) {
      const label = labels[item] as Label;
      let group = numbers.get(label);
      if (group === undefined) {
        group = numbers.size;
        numbers.set(label, group);
      }
      this.of[item] = group;
    }
    this.count = numbers.size;
    this.sizes = this.sums(new Float64Array(labels.length).fill(1));
    this.means = new Float64Array(this.count);
  }

  /** The sum of each group. */
  sums(
    values: Float64Array,
    into: Float64Array = new Float64Array(this.count),
  ): Float64Array<ArrayBufferLike> {
    for (let group = 0; group < this.count; group++) into[group] = 0;
    for (let item = 0; item < values.length; item++) {
      (into[this.of[item] as number] as number) += values[item] as number;
    }
    return into;
  }

  /** Subtracts its group's mean from each value, in place, and gives the mean of the groups' means. */
  centre(values: Float64Array): number {
    const { means } = this;
    this.sums(values, means);
    let total = 0;
    for (let group = 0; group < this.count; group++) {
      (means[group] as number) /= this.sizes[group] as number;
      total += means[group] as number;
    }
    for (let item = 0; item < values.length; item++) {
      (values[item] as number) -= means[this.of[item] as number] as number;
    }
    return total / this.count;
  }
}

/**
 * How many free means two groupings of the same items have together: all of both, less one for each set
 * of groups that no item ties to the rest. Counted as the ties of a spanning forest.
 */
export function rankTogether(a: Groups, b: Groups): number {
  const head = new Int32Array(a.count + b.count).map((_, group) => group);
  const headOf = (group: number): number => {
    let at = group;
    while (head[at] !== at) at = head[at] as number;
    return at;
  };
  let ties = 0;
  for (let item = 0; item < a.of.length; item++) {
    const one = headOf(a.of[item] as number);
    const other = headOf(a.count + (b.of[item] as number));
    if (one === other) continue;
    head[one] = other;
    ties++;
  }
  return ties;
}
