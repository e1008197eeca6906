import { describe, expect, it } from "vitest";
import { gaussLegendre } from "../../../src/model/numerics/quadrature";
import { expectRelative } from "../expectations";

const integrate = (count: number, f: (x: number) => number): number => {
  const { nodes, weights } = gaussLegendre(count);
  return nodes.reduce((sum, x, i) => sum + (weights[i] as number) * f(x), 0);
};

describe("Gauss–Legendre quadrature", () => {
  it("has the tabulated nodes and weights of five points", () => {
    // Abramowitz & Stegun (1964), table 25.4.
    const { nodes, weights } = gaussLegendre(5);
    expectRelative(nodes[4] as number, 0.906179845938664, 1e-15);
    expectRelative(nodes[3] as number, 0.538469310105683, 1e-15);
    expectRelative(weights[4] as number, 0.236926885056189, 1e-14);
    expectRelative(weights[2] as number, 0.568888888888889, 1e-14);
  });

  it.each([2, 7, 32, 64])("is exact to degree 2n − 1 with %i points", (count) => {
    const degree = 2 * count - 2;
    expectRelative(
      integrate(count, (x) => x ** degree),
      2 / (degree + 1),
      1e-12,
    );
    expect(Math.abs(integrate(count, (x) => x ** (degree + 1)))).toBeLessThan(1e-14);
  });

  it("works a rule out once", () => {
    expect(gaussLegendre(24)).toBe(gaussLegendre(24));
  });
});
