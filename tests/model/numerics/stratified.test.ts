import { describe, expect, it } from "vitest";
import { Random } from "../../../src/model/numerics/random";
import { stratified } from "../../../src/model/numerics/stratified";

describe("a stratified column", () => {
  const column = stratified(1000, new Random(3, 1));

  it("has one number in each part of (0, 1)", () => {
    const parts = [...column].map((value) => Math.floor(value * 1000)).sort((a, b) => a - b);
    expect(parts).toEqual(Array.from({ length: 1000 }, (_, part) => part));
  });

  it("is in random order: neighbours are not correlated", () => {
    let product = 0;
    for (let i = 1; i < column.length; i++) {
      product += ((column[i] as number) - 0.5) * ((column[i - 1] as number) - 0.5);
    }
    // Four standard errors of a lag correlation of 1000.
    expect(Math.abs((12 * product) / 1000)).toBeLessThan(4 / Math.sqrt(1000));
  });

  it("is the same for the same seed", () => {
    expect(stratified(9, new Random(8, 1))).toEqual(stratified(9, new Random(8, 1)));
    expect(stratified(9, new Random(8, 1))).not.toEqual(stratified(9, new Random(9, 1)));
  });
});
