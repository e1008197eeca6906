import { createRequire } from "node:module";
import { type Shape, scaleOf, unitCurves } from "../../src/model/strength/response";
import reference from "../references/least-cost-mix.json";
import { find, row } from "./bundle";
import { growth, type Measured, ratio } from "./measure";

type Constraint = (x: Float64Array, gradient: Float64Array | null) => number;

interface Optimiser {
  setMinObjective(cost: Constraint, tolerance: number): void;
  addInequalityConstraint(excess: Constraint, tolerance: number): void;
  setLowerBounds(bounds: number[]): void;
  setUpperBounds(bounds: number[]): void;
  setMaxeval(evaluations: number): void;
  optimize(start: number[]): { value: number };
}

interface Nlopt {
  readonly ready: Promise<void>;
  readonly Algorithm: { readonly LD_SLSQP: unknown };
  readonly Optimize: new (algorithm: unknown, size: number) => Optimiser;
  readonly GC: { flush(): void };
}

const PEER = "nlopt-js 0.1.1, SLSQP";
const AGREEMENT = 1e-8;
const MIXES = 20;

const eight = reference.cases.find(
  ({ prices }) => prices.length === 8,
) as (typeof reference.cases)[number];
const shapes = eight.shapes as Shape[];
const sideUse = eight.sideUse.slice(0, 1) as number[][];
const sideLimits = eight.sideLimits.slice(0, 1);

function ours(): () => number {
  const cheapest = find("COST.MIX");
  const { target, plateauGains, scales, prices, maxima } = eight;
  const cells = [plateauGains, scales, prices, maxima, shapes, ...sideUse].map((values) =>
    row(...values),
  );
  return () => {
    const table = cheapest([[target]], ...cells, row(...sideLimits)) as unknown[][];
    return table.find(([label]) => label === "total")?.[3] as number;
  };
}

/** The general solver, with exact derivatives, from half of each scale. */
function theirs(nlopt: Nlopt): () => number {
  const scales = shapes.map((shape, i) => scaleOf(eight.scales[i] as number, shape));
  const upTo = eight.maxima.map((maximum, i) =>
    shapes[i] === "peaked" ? Math.min(maximum, scales[i] as number) : maximum,
  );
  const sumOf =
    (weights: readonly number[], constant: number): Constraint =>
    (x, gradient) => {
      gradient?.set(weights);
      return weights.reduce((sum, weight, i) => sum + weight * (x[i] as number), constant);
    };
  const shortfall: Constraint = (x, gradient) =>
    shapes.reduce((left, shape, i) => {
      const scale = scales[i] as number;
      const gain = eight.plateauGains[i] as number;
      const t = (x[i] as number) / scale;
      if (gradient !== null) gradient[i] = (-gain / scale) * unitCurves[shape].slope(t);
      return left - gain * unitCurves[shape].rise(t);
    }, eight.target);
  return () => {
    const solver = new nlopt.Optimize(nlopt.Algorithm.LD_SLSQP, shapes.length);
    solver.setMinObjective(sumOf(eight.prices, 0), 1e-10);
    solver.addInequalityConstraint(shortfall, 1e-10);
    sideUse.forEach((use, j) => {
      solver.addInequalityConstraint(sumOf(use, -(sideLimits[j] as number)), 1e-10);
    });
    solver.setLowerBounds(shapes.map(() => 0));
    solver.setUpperBounds(upTo);
    solver.setMaxeval(1000);
    const { value } = solver.optimize(
      upTo.map((most, i) => Math.min(most, scales[i] as number) / 2),
    );
    nlopt.GC.flush();
    return value;
  };
}

const repeated = (run: () => unknown) => () => {
  for (let i = 0; i < MIXES; i += 1) run();
};

export async function mix(): Promise<Measured[]> {
  const nlopt = createRequire(import.meta.url)("nlopt-js") as Nlopt;
  await nlopt.ready;
  const peer = theirs(nlopt);
  if (Math.abs(ours()() / peer() - 1) > AGREEMENT) throw new Error("the costs of the mix differ");
  const cheapest = find("COST.MIX");
  return [
    {
      work: "COST.MIX, eight options with a side limit",
      measured: ratio(repeated(ours()), repeated(peer)),
      limit: 0.1,
      unit: `× ${PEER}`,
      note: `costs equal to ${AGREEMENT}; ours through the bundle, cells read and answered`,
    },
    {
      work: "options 2 → 64",
      measured: growth([2, 4, 8, 16, 32, 64], (size) => {
        const each = (value: (i: number) => unknown) =>
          row(...Array.from({ length: size }, (_, i) => value(i)));
        const cells = [
          each((i) => 4 + (i % 9)),
          each((i) => 1 + (i % 7)),
          each((i) => 0.2 + (i % 11) / 5),
          each((i) => 5 + (i % 5)),
          each((i) => ["exponential", "hyperbolic", "peaked"][i % 3]),
          each((i) => ((i * 3) % 8) / 8),
        ];
        return repeated(() => cheapest([[2 * size]], ...cells, [[size]]));
      }),
      limit: 1.1,
      unit: "exponent",
      note: "COST.MIX with a side limit",
    },
  ];
}
