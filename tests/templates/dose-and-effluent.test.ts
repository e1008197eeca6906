import { beforeAll, expect, test } from "vitest";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { doseAndEffluent } from "../../templates/plans/dose-and-effluent";
import { dissolvedFirstPass, furnish } from "../../templates/plans/harrow-fen/furnish";
import { alternatives, effluent, mill, starch } from "../../templates/plans/harrow-fen/mill";
import { september } from "../../templates/plans/harrow-fen/september";
import { keptInLoop, risesTo, settled, water } from "./by-hand";
import { computed, numberOf } from "./computed";
import { typedOver } from "./typed-over";

let book: PlannedBook;
beforeAll(async () => {
  ({ book } = await computed(doseAndEffluent));
});

const solids = furnish.map(({ share, surface, capacity, halfLoad }) => ({
  share,
  full: share * surface * capacity,
  halfLoad,
}));
const loops = [...furnish.map(({ firstPass }) => firstPass), dissolvedFirstPass].map((firstPass) =>
  keptInLoop(firstPass, mill.recycled, mill.degraded),
);
const keptOf = (dose: number, consistency: number = mill.consistency) =>
  settled(dose, water(consistency), solids).reduce(
    (sum, held, place) => sum + held * (loops[place] as number),
    0,
  );
const dose = risesTo(mill.wanted, keptOf, 0, 50);
const dry = mill.paper * (1 - mill.paperMoisture);
const lost = (dose - mill.wanted) * dry;

test("the dose leaves the wanted starch in the sheet, by Langmuir's isotherm and the loop", () => {
  expect(numberOf(book, "dose")).toBeCloseTo(dose, 6);
  expect(numberOf(book, "overallRetention")).toBeCloseTo(mill.wanted / dose, 7);
});

test("the dose is the one that the mill sets and the budget prices", () => {
  expect(numberOf(book, "dose")).toBeCloseTo(starch.dose, 1);
});

test("the pump gives that dose", () => {
  const litres = (dose * (dry / 24)) / (starch.solutionStrength * starch.solutionDensity);
  expect(numberOf(book, "pump")).toBeCloseTo(litres, 3);
});

test("what is not kept leaves, and its oxygen demand with it", () => {
  expect(numberOf(book, "lost")).toBeCloseTo(lost, 4);
  const free = 1 - effluent.margin;
  const perKilogram = lost / dose;
  const room = [
    [effluent.limit.cod * free - effluent.background.cod, starch.codFactor],
    [effluent.limit.bod * free - effluent.background.bod, starch.bodFactor],
    [effluent.limit.nitrogen * free - effluent.background.nitrogen, starch.nitrogen],
  ].map(([load, factor]) => (load as number) / (factor as number) / perKilogram);
  expect(numberOf(book, "mostDose")).toBeCloseTo(Math.min(...room), 4);
});

test("at parity a kilogram kept of either starch costs the same, each loss by its own oxygen demand", async () => {
  const nativeCod = 1.3;
  const { book } = await computed(typedOver(doseAndEffluent, { nativeCodFactor: nativeCod }));
  const perKept = (price: number, retention: number, cod: number) =>
    (price + (1 - retention) * cod * effluent.treatmentPrice) / retention;
  const retained = numberOf(book, "overallRetention");
  expect(perKept(numberOf(book, "parityPrice"), retained, starch.codFactor)).toBeCloseTo(
    perKept(alternatives.nativePrice, alternatives.nativeRetention, nativeCod),
    10,
  );
});

test("a unit of strength costs the starch and its loss, over the gain", () => {
  const loss = (lost / dry) * starch.codFactor * effluent.treatmentPrice;
  const cost = (dose * starch.activePrice + loss) / alternatives.increase;
  expect(numberOf(book, "starchCost")).toBeCloseTo(cost, 6);
});

test("the month above the permit is counted day by day", () => {
  const loads = september.days.map((_, day) => {
    const at = (values: readonly number[]) => values[day] as number;
    const tonnes = at(september.paper) * (1 - mill.paperMoisture);
    const kilograms = at(september.flow) * 24 * starch.solutionDensity * at(september.strength);
    const kept = keptOf(kilograms / tonnes, at(september.consistency)) * tonnes;
    return at(september.background) + (kilograms - kept) * starch.codFactor;
  });
  expect(numberOf(book, "highestCod")).toBeCloseTo(Math.max(...loads), 3);
  expect(numberOf(book, "daysAbove")).toBe(2);
  expect(loads.filter((load) => load > effluent.limit.cod).length).toBe(2);
});
