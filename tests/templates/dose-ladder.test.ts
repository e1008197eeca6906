import { beforeAll, expect, test } from "vitest";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { doseLadder } from "../../templates/plans/dose-ladder";
import { ladderPlan, ladderSheets } from "../../templates/plans/harrow-fen/ladder";
import { alternatives, effluent } from "../../templates/plans/harrow-fen/mill";
import dunnett from "../references/dunnett-two-sided-05.json";
import { exponentialThrough, mean } from "./by-hand";
import { computed, numberOf } from "./computed";

let book: PlannedBook;
beforeAll(async () => {
  ({ book } = await computed(doseLadder));
});

const index = ({ tensile, grammage }: (typeof ladderSheets)[number]) => (1000 * tensile) / grammage;
const doses = [...new Set(ladderSheets.map(({ dose }) => dose))].sort((a, b) => a - b);
const blocks = [...new Set(ladderSheets.map(({ block }) => block))];
/** The mean of the sheets of the one batch of a dose in a block. */
const batch = (dose: number, block: number) =>
  mean(ladderSheets.filter((its) => its.dose === dose && its.block === block).map(index));
const levels = doses.map((dose) => mean(blocks.map((block) => batch(dose, block))));

test("the trial was run as planned: each dose once in each block", () => {
  expect(blocks.length).toBe(ladderPlan.batches);
  expect(ladderSheets.length).toBe(doses.length * blocks.length * ladderPlan.sheets);
  expect(numberOf(book, "offPlan")).toBe(0);
  expect(numberOf(book, "missing")).toBe(0);
});

// Where every block holds every dose, the curve through all batches is the curve through the level means.
test("the dose for the wanted gain is read on the least-squares curve through the means", () => {
  const { gain, scale } = exponentialThrough(doses, levels);
  const dose = -scale * Math.log(1 - alternatives.increase / gain);
  expect(numberOf(book, "doseFor")).toBeCloseTo(dose, 4);
});

test("the lowest dose shown to differ is the first whose t passes the published critical value", () => {
  const overall = mean(levels);
  const days = blocks.map((block) => mean(doses.map((dose) => batch(dose, block))));
  const squares = doses.flatMap((dose, i) =>
    blocks.map((block, j) => {
      const expected = (levels[i] as number) + (days[j] as number) - overall;
      return (batch(dose, block) - expected) ** 2;
    }),
  );
  const freedom = (doses.length - 1) * (blocks.length - 1);
  const variance = mean(squares) * (squares.length / freedom);
  const error = Math.sqrt((2 * variance) / blocks.length);
  const treatments = doses.length - 1;
  const critical = dunnett.rows.find(({ degrees }) => degrees === freedom)?.critical[
    treatments - 1
  ] as number;
  const shown = doses.filter(
    (_, i) => Math.abs((levels[i] as number) - (levels[0] as number)) / error > critical,
  );
  expect(numberOf(book, "lowestShown")).toBe(shown[0]);
});

test("the wait lets a stirred loop come within a twentieth of a step", () => {
  const purge = Math.round(effluent.flow / 24);
  expect(Math.exp((-numberOf(book, "wait") * purge) / 900)).toBeCloseTo(0.05, 12);
});
