/**
 * What the answers of the templates are held against, worked out from the published relations and not by
 * the functions under test: Langmuir's isotherm on each component, all sharing one pool (J. Am. Chem. Soc.
 * 40 (1918) 1361), and the geometric series of an additive that goes round a loop.
 */
export interface Solid {
  readonly share: number;
  /** kg/t that fill its sites. */
  readonly full: number;
  readonly halfLoad: number;
}

/** The x in a range where a rising function reaches a target, to the last digit. */
export function risesTo(target: number, f: (x: number) => number, low: number, high: number) {
  let [from, to] = [low, high];
  for (let halving = 0; halving < 200; halving++) {
    const middle = (from + to) / 2;
    if (f(middle) < target) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** m³ of water that come with a tonne of solids; mg/L in it are g/m³. */
export const water = (consistency: number) => (1 - consistency) / consistency;

const holds = ({ full, halfLoad }: Solid, concentration: number) =>
  (full * concentration) / (halfLoad + concentration);

/** Held on each, and last the part still dissolved, kg/t, where `held` is there before and stays. */
export function settled(
  pool: number,
  volume: number,
  solids: readonly Solid[],
  held: readonly number[] = solids.map(() => 0),
): number[] {
  const taken = (concentration: number) =>
    solids.map((solid, i) => Math.max(0, holds(solid, concentration) - (held[i] as number)));
  const total = (concentration: number) =>
    taken(concentration).reduce((sum, amount) => sum + amount, (concentration * volume) / 1000);
  const concentration = risesTo(pool, total, 0, (1000 * pool) / volume);
  return [
    ...taken(concentration).map((amount, i) => amount + (held[i] as number)),
    (concentration * volume) / 1000,
  ];
}

export interface Order {
  /** Position at which the additive joins. */
  readonly starch: number;
  /** Positions at which the solids join. */
  readonly solids: readonly number[];
}

/** Down the stock line: what has joined settles with what is still dissolved; nothing held lets go. */
export function walked(
  dose: number,
  solids: readonly Solid[],
  places: readonly { readonly consistency: number }[],
  order: Order,
): number[] {
  let pool = 0;
  let held = solids.map(() => 0);
  places.forEach(({ consistency }, index) => {
    const position = index + 1;
    if (order.starch === position) pool = dose;
    if (pool === 0) return;
    const isHere = (solid: number) => (order.solids[solid] as number) <= position;
    const present = solids.map((solid, i) => ({ ...solid, full: isHere(i) ? solid.full : 0 }));
    const share = solids.reduce((sum, solid, i) => sum + (isHere(i) ? solid.share : 0), 0);
    const after = settled(pool, share * water(consistency), present, held);
    held = after.slice(0, -1);
    pool = after.at(-1) as number;
  });
  return [...held, pool];
}

/** Kept in the end of what is retained by f in a pass, where r of the rest returns and d of that is lost. */
export function keptInLoop(f: number, r: number, d: number): number {
  let kept = 0;
  let passing = 1;
  for (let pass = 0; pass < 5000; pass++) {
    kept += passing * f;
    passing *= (1 - f) * r * (1 - d);
  }
  return kept;
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Least squares for y = base + gain·(1 − e^(−x/scale)): a straight line in 1 − e^(−x/scale) for each scale,
 * and the scale by golden section.
 */
export function exponentialThrough(xs: readonly number[], ys: readonly number[]) {
  const lineFor = (scale: number) => {
    const us = xs.map((x) => 1 - Math.exp(-x / scale));
    const [meanU, meanY] = [mean(us), mean(ys)];
    const covariance = mean(us.map((u, i) => (u - meanU) * ((ys[i] as number) - meanY)));
    const gain = covariance / mean(us.map((u) => (u - meanU) ** 2));
    const base = meanY - gain * meanU;
    const misfit = mean(us.map((u, i) => ((ys[i] as number) - base - gain * u) ** 2));
    return { base, gain, scale, misfit };
  };
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [Math.max(...xs) / 100, Math.max(...xs) * 10];
  for (let step = 0; step < 200; step++) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (lineFor(left).misfit < lineFor(right).misfit) high = right;
    else low = left;
  }
  return lineFor((low + high) / 2);
}
