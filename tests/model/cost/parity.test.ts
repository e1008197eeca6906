import fc from "fast-check";
import { expect, test } from "vitest";
import { parityPrice } from "../../../src/model/cost/parity";

const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });
const money = fc.integer({ min: 0, max: 10_000 }).map((cents) => cents / 100);
const effect = fc.double({ min: 0.1, max: 10, noNaN: true });
/** Left out where the other loses at the price of the first. */
const lossOfOther = fc.option(money, { nil: undefined });

test("an additive retained ten times as well is worth ten times the price", () => {
  // Common practice, no source; ratios only, not advice to buy.
  expect(parityPrice(0.5, 0.1, 1, 0, 1)).toBeCloseTo(5, 13);
});

test("what is lost costs as well", () => {
  // By hand: (0.50 + 0.9·0.15)/0.1.
  expect(parityPrice(0.5, 0.1, 1, 0.15, 1)).toBeCloseTo(6.35, 13);
});

test("the other loses at its own price", () => {
  // A tonne kept, by hand. Of the first 5,000 kg are bought for 2,500 and 4,000 kg lost for 880: 3,380.
  // Of the other 1,250 kg are bought, 250 kg of them lost for 82.50: 3,297.50 is left, 2.638 a kg.
  expect(parityPrice(0.5, 0.2, 0.8, 0.22, 1, 0.33)).toBeCloseTo(2.638, 13);
  // A quarter more effect: 1,000 kg do, 200 kg of them lost for 66: 3,314 is left.
  expect(parityPrice(0.5, 0.2, 0.8, 0.22, 1.25, 0.33)).toBeCloseTo(3.314, 13);
});

test("at the parity price a unit of effect kept costs the same with both", () => {
  fc.assert(
    fc.property(
      money,
      fraction,
      fraction,
      money,
      effect,
      lossOfOther,
      (price, kept, otherKept, loss, strong, given) => {
        const other = parityPrice(price, kept, otherKept, loss, strong, given);
        const otherLoss = given ?? loss;
        const perEffect = (price + (1 - kept) * loss) / kept;
        const otherPerEffect = (other + (1 - otherKept) * otherLoss) / (otherKept * strong);
        const rounding = 1e-14 * (perEffect + otherLoss / otherKept / strong);
        expect(Math.abs(otherPerEffect - perEffect)).toBeLessThanOrEqual(rounding);
      },
    ),
  );
});

test("the parity of the parity is the price", () => {
  fc.assert(
    fc.property(
      money,
      fraction,
      fraction,
      money,
      effect,
      lossOfOther,
      (price, kept, otherKept, loss, strong, given) => {
        const otherLoss = given ?? loss;
        const other = parityPrice(price, kept, otherKept, loss, strong, given);
        const back = parityPrice(other, otherKept, kept, otherLoss, 1 / strong, loss);
        const rounding = (1e-14 * (price + loss + otherLoss / strong)) / otherKept;
        expect(Math.abs(back - price)).toBeLessThanOrEqual(rounding);
      },
    ),
  );
});
