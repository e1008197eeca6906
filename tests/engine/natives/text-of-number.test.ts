import { expect, test } from "vitest";
import { textOfNumber } from "../../../src/engine/natives/text-of-number";

test.each([
  [0, "0"],
  [-0, "0"],
  [1 / 3, "0.333333333333333"],
  [-2 / 3, "-0.666666666666667"],
  [0.1 + 0.2, "0.3"],
  [123456789012345680, "123456789012346000"],
  [1e20, "100000000000000000000"],
  [1e21, "1E+21"],
  [-1.5e300, "-1.5E+300"],
  [1.5e-7, "0.00000015"],
  [1.23456789012345e-7, "1.23456789012345E-07"],
  [1e-20, "1E-20"],
])("%s is %s", (number, text) => {
  expect(textOfNumber(number)).toBe(text);
});
