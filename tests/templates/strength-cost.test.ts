import { beforeAll, describe, expect, test } from "vitest";
import { parseAddress } from "../../src/workbook/address";
import { type Book, cellAt } from "../../src/workbook/book";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { additives, sheetFormer } from "../../templates/plans/harrow-fen/additives";
import { dissolvedFirstPass, furnish } from "../../templates/plans/harrow-fen/furnish";
import { ladderBatches, refiningBatches } from "../../templates/plans/harrow-fen/ladder";
import { alternatives, effluent, mill, starch } from "../../templates/plans/harrow-fen/mill";
import { orders, places } from "../../templates/plans/harrow-fen/orders";
import { strengthCost } from "../../templates/plans/strength-cost";
import { exponentialThrough, keptInLoop, mean, settled, walked, water } from "./by-hand";
import { computed, numberOf, recalculated, valueNamed } from "./computed";

const PATIENCE = 60_000;

let book: PlannedBook;
beforeAll(async () => {
  ({ book } = await computed(strengthCost));
}, PATIENCE);

const solids = furnish.map(({ share, surface, capacity, halfLoad }) => ({
  share,
  full: share * surface * capacity,
  halfLoad,
}));

/** Every day holds every dose once, so the curve through all batches is the curve through their means. */
const doses = [...new Set(ladderBatches.map(({ dose }) => dose))];
const response = exponentialThrough(
  doses.map((dose) => {
    const [fibre = 0, fines = 0] =
      dose === 0 ? [] : settled(dose, water(sheetFormer.consistency), solids);
    return fibre * sheetFormer.fibre + fines * sheetFormer.fines;
  }),
  doses.map((dose) =>
    mean(ladderBatches.filter((batch) => batch.dose === dose).map(({ index }) => index)),
  ),
);

const loops = [...furnish.map(({ firstPass }) => firstPass), dissolvedFirstPass].map((firstPass) =>
  keptInLoop(firstPass, mill.recycled, mill.degraded),
);

/** From the order of addition to the cost of a unit of strength, link by link. */
function costBy(order: (typeof orders)[number]) {
  const kept = walked(starch.dose, solids, places, order).map(
    (held, i) => held * (loops[i] as number),
  );
  const [fibre = 0, fines = 0] = kept;
  const gain = response.gain * (1 - Math.exp(-(fibre + fines) / response.scale));
  const lost = starch.dose - kept.reduce((sum, amount) => sum + amount, 0);
  const charge = lost * starch.codFactor * effluent.treatmentPrice;
  return { gain, unitCost: (starch.dose * starch.activePrice + charge) / gain };
}

describe("the chain from partition to cost", () => {
  test("gives the cost of a unit of strength by starch that a hand finds link by link", () => {
    expect(numberOf(book, "starchUnitCost")).toBeCloseTo(costBy(orders[0]).unitCost, 5);
  });

  test("gains at the mill's dose what the other workbooks take for it", () => {
    expect(costBy(orders[0]).gain).toBeCloseTo(alternatives.increase, 1);
  });

  test(
    "answers otherwise, and as a hand does, when the order of addition changes",
    async () => {
      const last = orders[2];
      const changed = await recalculated(withInput(book, "order", last.title));
      expect(numberOf(changed.book, "starchUnitCost")).toBeCloseTo(costBy(last).unitCost, 5);
      expect(numberOf(changed.book, "starchUnitCost")).toBeLessThan(
        numberOf(book, "starchUnitCost"),
      );
    },
    PATIENCE,
  );
});

test("a unit of strength by refining costs power and slower drainage, over the gain", () => {
  const energies = [...new Set(refiningBatches.map(({ energy }) => energy))];
  const of = (energy: number) => refiningBatches.filter((batch) => batch.energy === energy);
  const { gain, scale } = exponentialThrough(
    energies,
    energies.map((energy) => mean(of(energy).map(({ index }) => index))),
  );
  const meanEnergy = mean(refiningBatches.map(({ energy }) => energy));
  const rise =
    mean(refiningBatches.map(({ energy, drainage }) => (energy - meanEnergy) * drainage)) /
    mean(refiningBatches.map(({ energy }) => (energy - meanEnergy) ** 2));
  const energy = alternatives.refiningEnergy;
  const spent = energy * (alternatives.powerPrice + rise * alternatives.drainageCost);
  const unitCost = spent / (gain * (1 - Math.exp(-energy / scale)));
  expect(numberOf(book, "refiningUnitCost")).toBeCloseTo(unitCost, 5);
  expect(rise).toBeCloseTo(alternatives.drainageRise, 3);
});

describe("the cheapest mix", () => {
  const sheet = () =>
    book.sheets.find(({ name }) => name === "Mix") as PlannedBook["sheets"][number];
  const column = (letter: string, row: number, rows: number) =>
    Array.from({ length: rows }, (_, line) => {
      const at = parseAddress(`${letter}${row + line}`);
      return cellAt(sheet(), at.row, at.column)?.value as number;
    });
  const options = additives.length + 1;
  const inputs = () => ({
    gains: column("B", 11, options),
    scales: column("C", 11, options),
    prices: column("D", 11, options),
    drainage: column("F", 11, options),
  });

  test("reaches the gain within the drainage, at the sum of its parts", () => {
    const { gains, scales, prices, drainage } = inputs();
    const amounts = column("B", 20, options);
    const gained = amounts.map(
      (amount, i) => (gains[i] as number) * (1 - Math.exp(-amount / (scales[i] as number))),
    );
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    expect(sum(gained)).toBeCloseTo(numberOf(book, "target"), 6);
    expect(sum(amounts.map((amount, i) => amount * (drainage[i] as number)))).toBeLessThanOrEqual(
      numberOf(book, "drainageRoom") + 1e-7,
    );
    expect(sum(amounts.map((amount, i) => amount * (prices[i] as number)))).toBeCloseTo(
      numberOf(book, "mixCost"),
      6,
    );
  });

  test("cannot be made cheaper by shifting gain from one additive in use to another", () => {
    const { gains, scales, prices } = inputs();
    const amounts = column("B", 20, options);
    const slopes = amounts.flatMap((amount, i) => {
      const [gain, scale, price] = [gains[i], scales[i], prices[i]] as [number, number, number];
      const isAdditiveInUse = amount > 0 && i < additives.length;
      return isAdditiveInUse ? [price / ((gain / scale) * Math.exp(-amount / scale))] : [];
    });
    expect(slopes.length).toBeGreaterThan(1);
    for (const slope of slopes) expect(slope).toBeCloseTo(numberOf(book, "mixNext"), 4);
  });

  test("uses up the drainage that it may, since refining is cheap", () => {
    expect(valueNamed(book, "binding")).toBe("side limit 1");
  });
});

test("a thousand samples spread about the answer, and most of them find refining the cheaper", () => {
  const samples = book.sheets.find(({ name }) => name === "Samples") as Book["sheets"][number];
  const costs = Array.from(
    { length: 1000 },
    (_, row) => cellAt(samples, 4 + row, parseAddress("P1").column)?.value as number,
  );
  expect(mean(costs)).toBeCloseTo(numberOf(book, "starchUnitCost"), 1);
  expect(numberOf(book, "refiningCheaper")).toBeGreaterThan(0.5);
  expect(numberOf(book, "refiningCheaper")).toBeLessThan(1);
});

function withInput(of: PlannedBook, name: string, value: string): Book {
  const [sheetName, address = ""] = (
    of.definedNames.find((its) => its.name === name)?.formula ?? ""
  ).split("!");
  const { row, column } = parseAddress(address);
  const sheets = of.sheets.map((sheet) =>
    sheet.name === sheetName
      ? {
          ...sheet,
          cells: {
            ...sheet.cells,
            [row]: { ...sheet.cells[row], [column]: { ...sheet.cells[row]?.[column], value } },
          },
        }
      : sheet,
  );
  return { ...of, sheets };
}
