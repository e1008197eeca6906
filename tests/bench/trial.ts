import reference from "../references/comparisons.json";
import { find, row } from "./bundle";
import { type Measured, medianTime } from "./measure";

/** A ladder of six doses, up to five batches each, compared with its blank. */
export function trial(): Measured[] {
  const { levels, values, p } = reference.ladder;
  const compare = find("TRIAL.COMPARE");
  const [doses, strengths] = [row(...levels), row(...values)];
  const run = () => compare(doses, strengths, null, null, null, null) as (number | string)[][];
  const found = run().slice(2);
  const errors = found.map((line, i) => Math.abs((line[7] as number) - (p[i] as number)));
  const work = "TRIAL.COMPARE, six levels, unequal numbers";
  const note = "27 batches, limits and p of five differences";
  return [
    { work, measured: medianTime(run), limit: 5, unit: "ms", note },
    { work, measured: Math.max(...errors), limit: 1e-6, unit: "error in p", note },
  ];
}
