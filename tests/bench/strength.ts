import { levenbergMarquardt } from "ml-levenberg-marquardt";
import reference from "../references/nonlinear-regression.json";
import { column, find } from "./bundle";
import { type Measured, ratio } from "./measure";

/** As many digits as both are held to. */
const TOLERANCE = 1e-9;
const FITS = 100;
const PEER = "ml-levenberg-marquardt 5.1.0";

const models: Readonly<Record<string, (parameters: number[]) => (x: number) => number>> = {
  exponential:
    ([gain = 0, perScale = 0]) =>
    (x) =>
      gain * (1 - Math.exp(-perScale * x)),
  hyperbolic:
    ([gain = 0, perScale = 0]) =>
    (x) =>
      (gain * perScale * x) / (1 + perScale * x),
};

const sets = reference.cases.filter(({ starts }) => starts.length > 0);
type Set = (typeof sets)[number];

function ours(set: Set): () => number[] {
  const fitted = find("STRENGTH.FIT");
  const [doses, strengths] = [set.doses, set.strengths].map((values) =>
    column(values.length, (i) => values[i]),
  );
  return () => {
    const table = fitted(doses, strengths, set.shape, [[0]], null, null) as number[][];
    return [table[2]?.[1] as number, 1 / (table[3]?.[1] as number)];
  };
}

/**
 * The general solver with its own settings: it does not test whether it has arrived, and so spends all of its
 * iterations. Differences are central and fine enough for the digits.
 */
function theirs(set: Set, start: number[]): () => number[] {
  const model = models[set.shape] as (parameters: number[]) => (x: number) => number;
  const gradientDifference = start.map((value) => value * 1e-4);
  const options = {
    initialValues: start,
    gradientDifference,
    centralDifference: true,
    errorTolerance: 0,
  };
  return () =>
    levenbergMarquardt({ x: set.doses, y: set.strengths }, model, options).parameterValues;
}

/** A fit is over in microseconds: many of them make a time that can be read. */
function repeated(run: () => unknown): () => void {
  return () => {
    for (let i = 0; i < FITS; i += 1) run();
  };
}

function solves(run: () => number[], set: Set): boolean {
  const certified = [set.gain, set.perScale as number];
  return run().every((value, i) => Math.abs(value / (certified[i] as number) - 1) < TOLERANCE);
}

export function strength(): Measured[] {
  const [far, near] = [0, 1].map((which) => sets.map((set) => set.starts[which] as number[])) as [
    number[][],
    number[][],
  ];
  const theirSolved = sets.filter((set, i) => solves(theirs(set, far[i] as number[]), set)).length;
  const ourSolved = sets.filter((set) => solves(ours(set), set)).length;
  const times = sets.map((set, i) => {
    const peer = theirs(set, near[i] as number[]);
    if (!solves(peer, set)) throw new Error(`${PEER} misses the digits of ${set.name}`);
    return ratio(repeated(ours(set)), repeated(peer));
  });
  return [
    {
      work: "STRENGTH.FIT, NIST sets",
      measured: Math.max(...times),
      limit: 0.1,
      unit: `× ${PEER}`,
      note: `to ${TOLERANCE}, through the bundle and from no start, against the near start and its 100 iterations`,
    },
    {
      work: "STRENGTH.FIT, NIST sets not solved",
      measured: sets.length - ourSolved,
      limit: 0,
      unit: `of ${sets.length}`,
      note: `${PEER} from the far start leaves ${sets.length - theirSolved}`,
    },
  ];
}
