import { describe, expect, it } from "vitest";
import { makeDown } from "../../../src/model/trial/make-down";
import { expectRefusal, expectRelative } from "../expectations";

describe("the make-down", () => {
  it("closes on the solution and on the active additive", () => {
    const { productGrams, waterGrams } = makeDown(2, 0.03, 0.88, 0.9, 1.01);
    expectRelative(productGrams + waterGrams, 2020, 1e-15);
    expectRelative(productGrams * 0.88 * 0.9, 2020 * 0.03, 1e-15);
  });

  it("needs no water at the product's own strength, and refuses a higher one", () => {
    expect(makeDown(1, 0.2, 0.4, 0.5, 1).waterGrams).toBe(0);
    expectRefusal(
      "impossible input",
      "Strength is 0.25, and the product as received holds 0.2",
      () => makeDown(1, 0.25, 0.4, 0.5, 1),
    );
  });
});
