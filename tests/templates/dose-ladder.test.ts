import { beforeAll, describe, expect, test } from "vitest";
import { isError } from "../../src/workbook/book";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { doseLadder } from "../../templates/plans/dose-ladder";
import { ladderPlan, ladderSheets } from "../../templates/plans/harrow-fen/ladder";
import { alternatives, effluent } from "../../templates/plans/harrow-fen/mill";
import dunnett from "../references/dunnett-two-sided-05.json";
import { exponentialThrough, mean } from "./by-hand";
import { computed, numberOf, valueNamed } from "./computed";
import { typedOver } from "./typed-over";

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

test("the limits of that dose are those of the delta method, days taken out", () => {
  const { gain, scale } = exponentialThrough(doses, levels);
  const rise = doses.map((dose) => 1 - Math.exp(-dose / scale));
  const bend = doses.map((dose) => ((-gain * dose) / scale ** 2) * Math.exp(-dose / scale));
  const fitted = rise.map((share) => gain * share);
  const about = (values: readonly number[]) => values.map((value) => value - mean(values));
  const left = blocks.flatMap((block) => {
    const measured = about(doses.map((dose) => batch(dose, block)));
    return measured.map((value, i) => (value - (about(fitted)[i] as number)) ** 2);
  });
  const parameters = blocks.length + 2;
  const variance = (mean(left) * left.length) / (left.length - parameters);
  const product = (one: readonly number[], other: readonly number[]) =>
    blocks.length * doses.length * mean(about(one).map((x, i) => x * (about(other)[i] as number)));
  const [a, b, c] = [product(rise, rise), product(rise, bend), product(bend, bend)];
  const wanted = alternatives.increase / gain;
  // The dose is -scale·ln(1 - wanted); its slopes by gain and by scale.
  const [byGain, byScale] = [(-scale * wanted) / (gain * (1 - wanted)), -Math.log(1 - wanted)];
  const error = Math.sqrt(
    (variance * (byGain ** 2 * c - 2 * byGain * byScale * b + byScale ** 2 * a)) / (a * c - b * b),
  );
  const [low, high] = [numberOf(book, "doseLow"), numberOf(book, "doseHigh")];
  // A thousand samples hold a limit to a few per cent of the width.
  expect((high - low) / (2 * 1.96 * error)).toBeGreaterThan(0.9);
  expect((high - low) / (2 * 1.96 * error)).toBeLessThan(1.1);
  expect(low).toBeLessThan(numberOf(book, "doseFor"));
  expect(high).toBeGreaterThan(numberOf(book, "doseFor"));
});

describe("other results", () => {
  const withTensile = async (change: (value: number, row: number) => number | string | null) => {
    const plan = typedOver(
      doseLadder,
      {},
      {
        "results.tensile": (value, row) => change(value as number, row),
      },
    );
    return computed(plan);
  };

  test.each([null, "torn"])("a missing sheet (%j) is left out and counted", async (gone) => {
    const { book, failures } = await withTensile((value, row) => (row === 7 ? gone : value));
    expect(failures).toEqual([]);
    expect(numberOf(book, "missing")).toBe(1);
    // Its batch has the other sheet, so that the curve still passes through the level means.
    const others = ladderSheets.filter((_, row) => row !== 7);
    const means = doses.map((dose) =>
      mean(
        blocks.map((block) =>
          mean(others.filter((its) => its.dose === dose && its.block === block).map(index)),
        ),
      ),
    );
    const { gain, scale } = exponentialThrough(doses, means);
    const dose = -scale * Math.log(1 - alternatives.increase / gain);
    expect(numberOf(book, "doseFor")).toBeCloseTo(dose, 4);
  });

  test("a missing batch is said, and no dose is taken as shown", async () => {
    const { book, failures } = await withTensile((value, row) =>
      row === 6 || row === 7 ? null : value,
    );
    expect(failures.map(({ message }) => message)).toContain(
      "Block 1 has no batch of level 12. Make it up, or leave out that block or that level.",
    );
    expect(isError(valueNamed(book, "lowestShown"))).toBe(true);
  });

  test("where no dose differs none is named", async () => {
    const { book } = await withTensile((_, row) => 2 + ((row * 7919) % 13) / 50);
    expect(valueNamed(book, "lowestShown")).toBe("none");
  });

  test("a dose beyond the highest tried has no upper limit", async () => {
    const { book } = await computed(typedOver(doseLadder, { wantedGain: 5 }));
    expect(numberOf(book, "doseLow")).toBeLessThan(numberOf(book, "doseFor"));
    expect(valueNamed(book, "doseHigh")).toBe("beyond");
  });
});
