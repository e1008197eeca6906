import fc from "fast-check";
import { expect, test } from "vitest";
import {
  difference,
  type Expression,
  exponential,
  logarithm,
  negative,
  number,
  power,
  product,
  quotient,
  squareRoot,
  sum,
} from "../../src/working/expression";

test.each<[string, Expression, string, number]>([
  ["a number to six figures", number(1 / 3), "0.333333", 1 / 3],
  ["a tiny number by its power of ten", number(2.5e-9), "2.5 \\times 10^{-9}", 2.5e-9],
  ["a product of sums in brackets", product(2, sum(1, 3)), "2 \\cdot \\left(1 + 3\\right)", 8],
  ["a negative factor in brackets", product(2, -3), "2 \\cdot \\left(-3\\right)", -6],
  [
    "a taken difference in brackets",
    difference(5, difference(3, 1)),
    "5 - \\left(3 - 1\\right)",
    3,
  ],
  ["a product inside a sum without", sum(1, product(2, 3)), "1 + 2 \\cdot 3", 7],
  ["a fraction without brackets", quotient(sum(1, 3), difference(3, 1)), "\\frac{1 + 3}{3 - 1}", 2],
  [
    "a power of a product in brackets",
    power(product(2, 3), 2),
    "\\left(2 \\cdot 3\\right)^{2}",
    36,
  ],
  ["a sum of one as it is", sum(4), "4", 4],
  ["a long sum by its ends", sum(1, 2, 3, 4, 5, 6), "1 + 2 + 3 + \\cdots + 6", 21],
  ["a power of e", exponential(negative(0)), "e^{-0}", 1],
  ["a negated sum in brackets", negative(sum(1, 2)), "-\\left(1 + 2\\right)", -3],
  ["a logarithm", logarithm(quotient(1, 1)), "\\ln\\left(\\frac{1}{1}\\right)", 0],
  ["a root", squareRoot(sum(9, 7)), "\\sqrt{9 + 7}", 4],
])("%s", (_, one, tex, value) => {
  expect(one.tex).toBe(tex);
  expect(one.value).toBe(value);
});

test("brackets of an expression always close", () => {
  const leaf = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(number);
  const { tree } = fc.letrec<{ tree: Expression }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 4 },
      leaf,
      fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => sum(a, b)),
      fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => product(a, b)),
      fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => difference(a, b)),
      fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => quotient(a, b)),
    ),
  }));
  fc.assert(
    fc.property(tree, ({ tex }) => {
      const count = (sign: string) => tex.split(sign).length;
      expect(count("\\left(")).toBe(count("\\right)"));
      expect(count("{")).toBe(count("}"));
      expect(tex).not.toMatch(/[+\-·] -|\\cdot -/);
    }),
  );
});
