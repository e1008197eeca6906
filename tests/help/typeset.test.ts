import { expect, test } from "vitest";
import { typeset } from "../../src/help/typeset";

const count = (mathml: string) => mathml.match(/<math/g)?.length;

test("Equations that stand beside each other can be set one below the other.", () => {
  expect(count(typeset("x = 1, \\quad y = \\frac{a}{b}, \\quad z = 3"))).toBe(3);
  expect(count(typeset("x = \\frac{a}{b}"))).toBe(1);
});

test("What few fonts hold is set in signs that all of them do.", () => {
  expect(typeset("\\bar y = a\\cdot b")).toMatch(/¯.*·/s);
  expect(typeset("\\bar y = a\\cdot b")).not.toMatch(/[‾⋅\u{1d400}-\u{1d7ff}]/u);
});
