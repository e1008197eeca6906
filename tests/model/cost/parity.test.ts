import fc from "fast-check";
import { expect, test } from "vitest";
import { parityPrice } from "../../../src/model/cost/parity";

const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });
const money = fc.integer({ min: 0, max: 10_000 }).map((cents) => cents / 100);
const effect = fc.double({ min: 0.1, max: 10, noNaN: true });

test("an additive retained ten times as well is worth ten times the price", () => {
  // Common practice, no source; ratios only, not advice to buy.
  expect(parityPrice(0.5, 0.1, 1, 0, 1)).toBeCloseTo(5, 13);
});

test("what is lost costs as well", () => {
  // By hand: (0.50 + 0.9·0.15)/0.1.
  expect(parityPrice(0.5, 0.1, 1, 0.15, 1)).toBeCloseTo(6.35, 13);
});

test("at the parity price a unit of effect kept costs the same with both", () => {
  fc.assert(
    fc.property(
      money,
      fraction,
      fraction,
      money,
      effect,
      (price, kept, otherKept, loss, strong) => {
        const other = parityPrice(price, kept, otherKept, loss, strong);
        const perEffect = (price + (1 - kept) * loss) / kept;
        const otherPerEffect = (other + (1 - otherKept) * loss) / (otherKept * strong);
        const rounding = 1e-14 * (perEffect + loss / otherKept / strong);
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
      (price, kept, otherKept, loss, strong) => {
        const other = parityPrice(price, kept, otherKept, loss, strong);
        const back = parityPrice(other, otherKept, kept, loss, 1 / strong);
        const rounding = (1e-14 * (price + loss + loss / strong)) / otherKept;
        expect(Math.abs(back - price)).toBeLessThanOrEqual(rounding);
      },
    ),
  );
});
