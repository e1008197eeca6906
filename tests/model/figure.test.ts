import { describe, expect, test } from "vitest";
import { counted, figure, figureBeside } from "../../src/model/figure";

describe("a number in a message", () => {
  test.each([
    [0.1 + 0.2, "0.3"],
    [1234567.8, "1234570"],
    [0, "0"],
    [-2.5, "-2.5"],
    [1.23456789e-9, "1.23457e-9"],
  ])("%s reads %s", (value, shown) => {
    expect(figure(value)).toBe(shown);
  });

  test.each([
    [12, 10, "12"],
    [10.0000001, 10, "10.0000001"],
    [10, 10.0000001, "10"],
    [10, 10, "10"],
    [1 + Number.EPSILON, 1, "1.0000000000000002"],
  ])("%s beside %s reads %s: what differs looks different", (value, other, shown) => {
    expect(figureBeside(value, other)).toBe(shown);
  });
});

test.each([
  [0, "0 values"],
  [1, "1 value"],
  [2, "2 values"],
])("%i of a thing are %s", (count, words) => {
  expect(counted(count, "value")).toBe(words);
});
