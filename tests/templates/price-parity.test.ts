import { beforeAll, expect, test } from "vitest";
import { additiveProperty } from "../../src/library/catalogue";
import { type Book, cellAt } from "../../src/workbook/book";
import { chemicalBudget } from "../../templates/plans/chemical-budget";
import { ranges } from "../../templates/plans/chemical-budget/parity-range";
import { alternatives, effluent, starch } from "../../templates/plans/harrow-fen/mill";
import { computed, numberOf } from "./computed";
import { typedOver } from "./typed-over";

let book: Book;
beforeAll(async () => {
  ({ book } = await computed(chemicalBudget));
});

const sheetOf = (its: Book, name: string) =>
  its.sheets.find((sheet) => sheet.name === name) as Book["sheets"][number];
const valueAt = (its: Book, sheet: string, row: number, column: number) =>
  cellAt(sheetOf(its, sheet), row - 1, column)?.value;
const typed = async (inputs: Record<string, number>) =>
  (await computed(typedOver(chemicalBudget, inputs))).book;

/** By a balance of money: 1/r kg are bought for each that is kept, and the rest is charged for. */
const perKept = (price: number, retention: number, codFactor: number) =>
  price / retention + (1 / retention - 1) * codFactor * effluent.treatmentPrice;
const hand = (retention: number, other: number, effect: number, otherCod: number) => {
  const asMuch = effect * perKept(starch.activePrice, retention, starch.codFactor);
  return other * (asMuch - (1 / other - 1) * otherCod * effluent.treatmentPrice);
};

test("at parity a kilogram kept of either costs the same, its loss paid for", () => {
  const parity = numberOf(book, "parityPrice");
  expect(perKept(parity, alternatives.nativeRetention, alternatives.nativeCodFactor)).toBeCloseTo(
    perKept(starch.activePrice, numberOf(book, "retention"), starch.codFactor),
    10,
  );
});

test("the oxygen demand that stands there for the other is the library's", () => {
  const { value, evidence } = additiveProperty("Native maize starch", "COD factor", null);
  expect(alternatives.nativeCodFactor).toBe(value);
  expect(valueAt(book, "Parity", 13, 3)).toBe(`Starch: ${value}, from memory.`);
  expect(evidence).toBe("typical, from memory");
});

test("the other is charged for its own oxygen demand, in the answer and in the grid", async () => {
  const its = await typed({ otherCodFactor: 1.9, relativeEffect: 1.1 });
  const retention = numberOf(its, "retention");
  const answer = hand(retention, alternatives.nativeRetention, 1.1, 1.9);
  expect(numberOf(its, "parityPrice")).toBeCloseTo(answer, 12);
  for (const [row, other] of [
    [35, 0.2],
    [42, 0.9],
  ] as const)
    expect(valueAt(its, "Parity", row, 2)).toBeCloseTo(hand(retention, other, 1.1, 1.9), 12);
});

/** The columns of samples: both retentions and the effect. */
const drawn = () =>
  [0, 1, 2].map((column) =>
    Array.from({ length: 1000 }, (_, row) =>
      Number(valueAt(book, "Parity samples", row + 8, column)),
    ),
  ) as [number[], number[], number[]];

test("the range holds 95 % of the prices of parity of the samples", () => {
  const [kept, otherKept, effect] = drawn();
  const worth = kept.map((retention, row) =>
    hand(retention, otherKept[row] as number, effect[row] as number, alternatives.nativeCodFactor),
  );
  const sorted = worth.sort((a, b) => a - b);
  // JCGM 101:2008, 7.7: of 1,000 values in order the 25th and the one 950 places on.
  expect(numberOf(book, "parityLow")).toBeCloseTo(sorted[24] as number, 12);
  expect(numberOf(book, "parityHigh")).toBeCloseTo(sorted[974] as number, 12);
});

test("the range is that of three triangles, whatever the draw", () => {
  const slices = 50;
  const slice = [...Array(slices).keys()].map((index) => (index + 0.5) / slices);
  const [kept, otherKept, effect] = ranges.map(({ key, low, high }) => {
    const likely = numberOf(book, key);
    const rise = (likely - low) / (high - low);
    return slice.map((p) =>
      p < rise
        ? low + Math.sqrt(p * (high - low) * (likely - low))
        : high - Math.sqrt((1 - p) * (high - low) * (high - likely)),
    );
  }) as [number[], number[], number[]];
  const all = kept.flatMap((r) =>
    otherKept.flatMap((o) => effect.map((e) => hand(r, o, e, alternatives.nativeCodFactor))),
  );
  const sorted = Float64Array.from(all).sort();
  const quantile = (p: number) => sorted[Math.round(p * sorted.length)] as number;
  for (const [name, p] of [
    ["parityLow", 0.025],
    ["parityHigh", 0.975],
  ] as const) {
    // Three standard errors of a quantile of 1,000 values: √(p(1 − p)/n) over the density there.
    const density = 0.02 / (quantile(p + 0.01) - quantile(p - 0.01));
    const tolerance = (3 * Math.sqrt((p * (1 - p)) / 1000)) / density;
    expect(Math.abs(numberOf(book, name) - quantile(p))).toBeLessThan(tolerance);
  }
});

test("the three that are uncertain are drawn each for itself", () => {
  const [kept, otherKept, effect] = drawn();
  const correlation = (xs: number[], ys: number[]) => {
    const mean = (of: number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;
    const [x, y] = [mean(xs), mean(ys)];
    const products = (as: number[], bs: number[], a: number, b: number) =>
      mean(as.map((one, row) => (one - a) * ((bs[row] as number) - b)));
    return products(xs, ys, x, y) / Math.sqrt(products(xs, xs, x, x) * products(ys, ys, y, y));
  };
  // Three standard errors of the correlation of 1,000 pairs that have none.
  const none = 3 / Math.sqrt(1000);
  for (const [xs, ys] of [
    [kept, otherKept],
    [kept, effect],
    [otherKept, effect],
  ] as const)
    expect(Math.abs(correlation(xs, ys))).toBeLessThan(none);
});

test.each([
  [{}, "Settled: the price asked lies above that range, so this additive is cheaper."],
  [{ otherPrice: 0.05 }, "Not settled: the price asked lies inside that range."],
  [
    { otherPrice: 0.05, treatmentPrice: 0 },
    "Settled: the price asked lies below that range, so the other one is cheaper.",
  ],
  [{ retention: 0.9 }, "A likely value lies outside its low and high: widen them."],
])("with %j typed a sentence says whether it is settled", async (inputs, says) => {
  expect(valueAt(await typed(inputs), "Parity", 29, 0)).toBe(says);
});
