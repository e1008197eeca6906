/** Nodes in (−1, 1), ascending, and their weights. */
export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, Rule>();

/**
 * The Gauss–Legendre rule of `count` points, worked out at its first use.
 *
 * Newton's method on the Legendre polynomial, started from the asymptotic zeros.
 *
 * Source: NIST Digital Library of Mathematical Functions, 3.5.15–3.5.19, 18.9.1 and 18.16.
 */
export function gaussLegendre(count: number): Rule {
  const known = rules.get(count);
  if (known) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 0;
    for (let step = 0; step < 5; step++) {
      let below = 0;
      let value = 1;
      for (let degree = 1; degree <= count; degree++) {
        const next = ((2 * degree - 1) * x * value - (degree - 1) * below) / degree;
        below = value;
        value = next;
      }
      slope = (count * (below - x * value)) / (1 - x * x);
      x -= value / slope;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { nodes, weights };
  rules.set(count, rule);
  return rule;
}
