import { describe, expect, it } from "vitest";
import { Random } from "../../../src/model/numerics/random";
import { compareWithControl } from "../../../src/model/trial/compare";

/** The values of a trial in which nothing differs, with the labels of their blocks and batches. */
interface Trial {
  readonly levels: number[];
  readonly values: number[];
  readonly blocks?: number[];
  readonly batches?: number[];
}

const ALPHA = 0.05;
const TRIALS = 800;
const FOUR_STANDARD_ERRORS = 4 * Math.sqrt((ALPHA * (1 - ALPHA)) / TRIALS);

/** How often some level is found to differ from the control. */
function alarmRate(trial: () => Trial): number {
  let alarms = 0;
  for (let i = 0; i < TRIALS; i++) {
    const { levels, values, blocks, batches } = trial();
    const rows = compareWithControl(levels, values, blocks, batches, 0, ALPHA).levels;
    if (rows.some((row) => row.against !== undefined && row.against.p < ALPHA)) alarms++;
  }
  return alarms / TRIALS;
}

const repeated = (levels: number, each: number) =>
  Array.from({ length: levels * each }, (_, i) => Math.floor(i / each));

/** Six levels, four batches of five sheets; batches vary by 0.8 of what sheets vary. */
function sheetsInBatches(random: Random) {
  const levels = repeated(6, 20);
  const batches = levels.map((_, i) => Math.floor(i / 5));
  const errors = Array.from({ length: 24 }, () => 0.8 * random.normal());
  const values = batches.map((batch) => 60 + (errors[batch] as number) + random.normal());
  return { levels, values, batches };
}

describe("false alarms when nothing differs", () => {
  it("come at the nominal rate with batches", () => {
    const random = new Random(41, 1);
    const rate = alarmRate(() => sheetsInBatches(random));
    expect(Math.abs(rate - ALPHA)).toBeLessThan(FOUR_STANDARD_ERRORS);
  });

  it("come four times in ten when sheets are taken for replicates", () => {
    const random = new Random(42, 1);
    const rate = alarmRate(() => {
      const { levels, values } = sheetsInBatches(random);
      return { levels, values };
    });
    expect(rate).toBeGreaterThan(0.35);
    expect(rate).toBeLessThan(0.5);
  });

  it("come at the nominal rate with blocks that differ widely", () => {
    const random = new Random(43, 1);
    const levels = repeated(5, 4);
    const blocks = levels.map((_, i) => i % 4);
    const rate = alarmRate(() => {
      const effects = blocks.slice(0, 4).map(() => 5 * random.normal());
      const values = blocks.map((block) => 60 + (effects[block] as number) + random.normal());
      return { levels, values, blocks };
    });
    expect(Math.abs(rate - ALPHA)).toBeLessThan(FOUR_STANDARD_ERRORS);
  });
});
