import { beforeAll, expect, test } from "vitest";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { furnishPartition } from "../../templates/plans/furnish-partition";
import { dissolvedFirstPass, furnish } from "../../templates/plans/harrow-fen/furnish";
import { mill, starch } from "../../templates/plans/harrow-fen/mill";
import { orders, places } from "../../templates/plans/harrow-fen/orders";
import { keptInLoop, walked } from "./by-hand";
import { computed, numberOf, valueNamed } from "./computed";

let book: PlannedBook;
beforeAll(async () => {
  ({ book } = await computed(furnishPartition));
});

const solids = furnish.map(({ share, surface, capacity, halfLoad }) => ({
  share,
  full: share * surface * capacity,
  halfLoad,
}));

const loops = [...furnish.map(({ firstPass }) => firstPass), dissolvedFirstPass].map((firstPass) =>
  keptInLoop(firstPass, mill.recycled, mill.degraded),
);
const onFibreAndFines = orders.map((order) => {
  const [fibre = 0, fines = 0] = walked(starch.dose, solids, places, order).map(
    (held, i) => held * (loops[i] as number),
  );
  return (fibre + fines) / starch.dose;
});

test("the best order of addition is the one that a walk down the line by hand finds", () => {
  const best = Math.max(...onFibreAndFines);
  expect(valueNamed(book, "bestOrder")).toBe(orders[onFibreAndFines.indexOf(best)]?.title);
  expect(numberOf(book, "bestShare")).toBeCloseTo(best, 9);
  expect(numberOf(book, "worstShare")).toBeCloseTo(Math.min(...onFibreAndFines), 9);
});

test("what filler takes that joins after the starch is next to nothing", () => {
  const [together, beforeFiller] = orders.map(
    (order) => walked(starch.dose, solids, places, order)[2] as number,
  );
  expect(beforeFiller).toBeLessThan(0.1 * (together as number));
});
