import { expect, test } from "vitest";
import { typeset } from "../../src/help/typeset";

const count = (mathml: string) => mathml.match(/<math/g)?.length;

test("Equations that stand beside each other can be set one below the other.", () => {
  expect(count(typeset("x = 1, \\quad y = \\frac{a}{b}, \\quad z = 3"))).toBe(3);
  expect(count(typeset("x = \\frac{a}{b}"))).toBe(1);
});
