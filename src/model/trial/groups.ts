/** A name or a number that tells a level, a block or a batch from the others. */
export type Label = number | string;

/** Which values belong together, by their labels. */
export class Groups {
  /** The group of each value, numbered in the order in which the labels first appear. */
  readonly of: Int32Array;
  readonly count: number;
  readonly sizes: Float64Array;

  constructor(labels: readonly Label[]) {
    const numbers = new Map<Label, number>();
    for (const label of labels) if (!numbers.has(label)) numbers.set(label, numbers.size);
    this.of = Int32Array.from(labels, (label) => numbers.get(label) as number);
    this.count = numbers.size;
    this.sizes = this.sums(new Float64Array(labels.length).fill(1));
  }

  /** The sum of each group. */
  sums(values: Float64Array): Float64Array {
    const sums = new Float64Array(this.count);
    this.of.forEach((group, i) => {
      (sums[group] as number) += values[i] as number;
    });
    return sums;
  }

  /** The values less the mean of their group. */
  centred(values: Float64Array): Float64Array {
    const sums = this.sums(values);
    return values.map((value, i) => {
      const group = this.of[i] as number;
      return value - (sums[group] as number) / (this.sizes[group] as number);
    });
  }
}
