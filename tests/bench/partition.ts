import { createRequire } from "node:module";
import { find, row } from "./bundle";
import { growth, type Measured, ratio } from "./measure";

type Newton = (
  f: (x: number) => number,
  derivative: (x: number) => number,
  start: number,
  options: { tolerance: number; maxIterations: number },
) => number | false;

const newton = createRequire(import.meta.url)("newton-raphson-method") as Newton;

const shares = [0.55, 0.25, 0.2];
const surfaces = [1.5, 8, 12];
const capacities = [8, 10, 1.667];
const halfLoads = [20, 11, 1];
const consistency = 0.03;
const filled = shares.map(
  (share, i) => share * (surfaces[i] as number) * (capacities[i] as number),
);
const water = (1 - consistency) / consistency / 1000;

/** The same balance by a general root finder, from the start that never overshoots. */
function byNewton(dose: number): number[] {
  const balance = (c: number) =>
    filled.reduce((sum, q, i) => sum + (q * c) / ((halfLoads[i] as number) + c), c * water - dose);
  const slope = (c: number) =>
    filled.reduce(
      (sum, q, i) => sum + (q * (halfLoads[i] as number)) / ((halfLoads[i] as number) + c) ** 2,
      water,
    );
  const c = newton(balance, slope, 0, { tolerance: 1e-14, maxIterations: 100 }) as number;
  return [...filled.map((q, i) => (q * c) / ((halfLoads[i] as number) + c)), c * water];
}

export function partition(): Measured[] {
  const doses = Array.from({ length: 500 }, (_, i) => 0.5 + i * 0.1);
  const settle = find("PARTITION.EQUILIBRIUM");
  const cells = [row(...shares), row(...surfaces), row(...capacities), row(...halfLoads)];
  const ours = () =>
    settle(
      doses.map((dose) => [dose]),
      [[consistency]],
      ...cells,
    ) as number[][];
  const theirs = () => doses.map(byNewton);
  const other = theirs();
  ours().forEach((line, i) => {
    line.forEach((value, j) => {
      const theirValue = other[i]?.[j] as number;
      if (Math.abs(value - theirValue) > 1e-9) throw new Error(`answers differ at ${i}, ${j}`);
    });
  });
  return [
    {
      work: "PARTITION.EQUILIBRIUM, three components",
      measured: ratio(ours, theirs),
      limit: 0.5,
      unit: "× newton-raphson-method 1.0.2",
      note: "500 doses as one block, cells read and answered",
    },
    {
      work: "components 3 → 300",
      measured: growth([3, 10, 30, 100, 300], (size) => {
        const each = (value: number) => row(...Array.from({ length: size }, () => value));
        const components = [
          each(1 / size),
          each(5),
          each(8),
          row(...Array.from({ length: size }, (_, i) => 1 + i)),
        ];
        const days = Array.from({ length: 50 }, (_, i) => [1 + i * 0.2]);
        return () => settle(days, [[0.01]], ...components);
      }),
      limit: 1.1,
      unit: "exponent",
      note: "PARTITION.EQUILIBRIUM, 50 cases",
    },
  ];
}
