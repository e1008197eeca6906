import { beforeAll, describe, expect, test } from "vitest";
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

/** The doses whose t passes the published critical value, days taken out, worked out from some blocks alone. */
function shownBy(kept: readonly number[]): number[] {
  const levels = doses.map((dose) => mean(kept.map((block) => batch(dose, block))));
  const overall = mean(levels);
  const days = kept.map((block) => mean(doses.map((dose) => batch(dose, block))));
  const squares = doses.flatMap((dose, i) =>
    kept.map((block, j) => {
      const expected = (levels[i] as number) + (days[j] as number) - overall;
      return (batch(dose, block) - expected) ** 2;
    }),
  );
  const freedom = (doses.length - 1) * (kept.length - 1);
  const variance = mean(squares) * (squares.length / freedom);
  const error = Math.sqrt((2 * variance) / kept.length);
  const treatments = doses.length - 1;
  const critical = dunnett.rows.find(({ degrees }) => degrees === freedom)?.critical[
    treatments - 1
  ] as number;
  return doses.filter(
    (_, i) => Math.abs((levels[i] as number) - (levels[0] as number)) / error > critical,
  );
}

test("the lowest dose shown to differ is the first whose t passes the published critical value", () => {
  expect(numberOf(book, "lowestShown")).toBe(shownBy(blocks)[0]);
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

describe("the bench sheet", () => {
  const listed = (its: PlannedBook, column: number) => {
    const cells = its.sheets.find(({ name }) => name === "Bench sheet")?.cells ?? {};
    return Object.entries(cells)
      .filter(([row]) => Number(row) >= 10)
      .map(([, line]) => line[column]?.value)
      .filter((value) => value !== null && value !== undefined);
  };

  test("lists the sheets that were made, in their order", () => {
    (["block", "run", "dose", "sheet"] as const).forEach((key, column) => {
      expect(listed(book, column)).toEqual(ladderSheets.map((sheet) => sheet[key]));
    });
  });

  test("says stock and solution once for a batch, as worked out from its mass", () => {
    // 60 g/m² on 0.02 m², two sheets; stock of 1 %, solution of 0.2 %.
    const fibre = 60 * 0.02 * ladderPlan.sheets;
    const first = ladderSheets.map(({ sheet }) => sheet === 1);
    listed(book, 4).forEach((stock, at) => {
      if (first[at]) expect(stock).toBeCloseTo(fibre / 0.01, 9);
      else expect(stock).toBe("");
    });
    listed(book, 5).forEach((solution, at) => {
      const dose = ladderSheets[at]?.dose ?? 0;
      if (first[at]) expect(solution).toBeCloseTo((dose * fibre) / 1000 / 0.002, 9);
    });
  });

  test("has a line to write on for every sheet of a larger trial", async () => {
    const { book: larger, failures } = await computed(
      typedOver(doseLadder, { variation: 0.05, difference: 0.04, blocks: 35 }),
    );
    expect(failures).toEqual([]);
    expect(numberOf(larger, "needed")).toBe(35);
    const sheets = 35 * doses.length * ladderPlan.sheets;
    expect(listed(larger, 0).length).toBe(sheets);
    expect(listed(larger, 6).every((line) => /^_+$/.test(`${line}`))).toBe(true);
  });
});

test("the solution is cooked and diluted to the strength that was asked for", () => {
  const [starch, water] = [numberOf(book, "starchIn"), numberOf(book, "waterIn")];
  const [cooked, more] = [numberOf(book, "cookedIn"), numberOf(book, "dilutionIn")];
  const strength = (starch * 0.88) / (starch + water);
  expect((cooked * strength) / (cooked + more)).toBeCloseTo(0.002, 12);
  expect(cooked + more).toBeCloseTo(1000, 9);
});

test("too few batches show less: a difference that the power of the trial reaches", async () => {
  const { book: few } = await computed(
    typedOver(doseLadder, { variation: 0.05, difference: 0.04, blocks: 6 }),
  );
  const smallest = numberOf(few, "smallest");
  const { book: asked } = await computed(
    typedOver(doseLadder, { variation: 0.05, difference: smallest, blocks: 6 }),
  );
  expect(numberOf(asked, "needed")).toBeLessThanOrEqual(6);
  const { book: less } = await computed(
    typedOver(doseLadder, { variation: 0.05, difference: 0.93 * smallest, blocks: 6 }),
  );
  expect(numberOf(less, "needed")).toBeGreaterThan(6);
});

test("the steps of the mill run follow each other by the clock, half an hour at the finest", () => {
  const cells = book.sheets.find(({ name }) => name === "Mill run")?.cells ?? {};
  const row = Object.values(cells).find((line) => line[0]?.value === "1  blank");
  const hours = (column: number) => 24 * ((row?.[column]?.value as number) - 45_964.25);
  expect(hours(3)).toBe(0);
  expect(hours(4)).toBeCloseTo(22.5, 6);
  expect(hours(5)).toBeCloseTo(26.5, 6);
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

  test("a word may stand in place of a tensile, as the sheet says, and no number out of range", () => {
    const { entryRules } = book.sheets.find(({ name }) => name === "Results") ?? {};
    const asked = entryRules?.find(({ type }) => type === "custom");
    expect(asked?.area).toMatchObject({ row: 4, column: 4 });
    expect(asked?.from).toBe("OR(ISTEXT(E5),AND(E5>=0.001,E5<=100))");
    expect(asked?.refusal?.text).toBe(
      "Give a number from 0.001 to 100 (kN/m). Or write why there is none.",
    );
  });

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

  test("a batch that was lost costs its block in the comparison, and only itself in the fit", async () => {
    const { book, failures } = await withTensile((value, row) =>
      row === 6 || row === 7 ? null : value,
    );
    expect(failures).toEqual([]);
    expect(numberOf(book, "blocksLeftOut")).toBe(1);
    expect(numberOf(book, "lowestShown")).toBe(shownBy(blocks.slice(1))[0]);
    expect(numberOf(book, "batchesFitted")).toBe(doses.length * blocks.length - 1);
  });

  test("a slip of the pen is pointed out, and nothing else", async () => {
    expect(numberOf(book, "farOffSheets")).toBe(0);
    const slipped = await withTensile((value, row) => (row === 10 ? 10 * value : value));
    expect(numberOf(slipped.book, "farOffSheets")).toBe(1);
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
