import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studentTail } from "../../../src/model/numerics/student-t";
import { compareWithControl } from "../../../src/model/trial/compare";
import { loadingsOf, withinBlocks } from "../../../src/model/trial/within-blocks";
import comparisons from "../../references/comparisons.json";
import statistics from "../../references/trial-statistics.json";
import { expectRefusal, expectRelative } from "../expectations";

const { data, means, p_two, margin_two } = statistics.dunnett_example;
const names = Object.entries(data).flatMap(([name, values]) => values.map(() => name));
const values = Object.values(data).flat();

const plain = (levels: (number | string)[], given: number[], control?: number | string) =>
  compareWithControl(levels, given, undefined, undefined, control, 0.05).levels;

describe("comparison with a control", () => {
  it("reproduces the worked example, names as levels", () => {
    const rows = plain(names, values);
    expect(rows.map((row) => row.level)).toEqual(["control", "a", "b", "c"]);
    expect(rows.map((row) => row.mean)).toEqual(means);
    expect(rows[0]?.against).toBeUndefined();
    expectRelative(rows[1]?.deviation as number, Math.sqrt(27), 1e-14);
    rows.slice(1).forEach(({ mean, against }, i) => {
      expect(against?.estimate).toBe(mean - 50);
      expectRelative(against?.p as number, p_two[i] as number, 1e-7);
      const margin = margin_two[i] as number;
      expectRelative((against?.upper as number) - (mean - 50), margin, 1e-7);
      expectRelative(mean - 50 - (against?.lower as number), margin, 1e-7);
    });
  });

  it("says what its limits come from: the worked example's mean square, its degrees of freedom, its t", () => {
    const { control, deviation, degrees, critical } = compareWithControl(
      names,
      values,
      undefined,
      undefined,
      undefined,
      0.05,
    );
    expect(control).toBe("control");
    expect(degrees).toBe(8);
    expectRelative(deviation, Math.sqrt(19), 1e-14);
    expectRelative(critical * Math.sqrt((19 * 2) / 3), margin_two[0] as number, 1e-7);
  });

  it("has the p of a ladder with unequal numbers to 1e-9", () => {
    const { levels, values: strengths, p } = comparisons.ladder;
    plain(levels, strengths)
      .slice(1)
      .forEach(({ against }, i) => {
        expect(Math.abs((against?.p as number) - (p[i] as number))).toBeLessThan(1e-9);
      });
  });

  it("is the pooled t test with one level beside the control", () => {
    const { 5: control, 10: treated } = statistics.hardwood_paper_tensile.data;
    const levels = [...control.map(() => 5), ...treated.map(() => 10)];
    const row = plain(levels, [...control, ...treated])[1];
    // Sums of squares by hand: 40 within 5 %, 118/3 within 10 %.
    const error = Math.sqrt(((40 + 118 / 3) / 10) * (2 / 6));
    expectRelative(row?.against?.estimate as number, 17 / 3, 1e-14);
    expectRelative(row?.against?.p as number, 2 * studentTail(17 / 3 / error, 10), 1e-12);
  });

  it("takes 0 for the control, or the first of names then numbers upwards, or the one that is named", () => {
    const control = (levels: (number | string)[], given?: number | string) =>
      plain(
        [...levels, ...levels],
        [...levels, ...levels].map((_, i) => i * i + 1),
        given,
      ).find((row) => row.against === undefined)?.level;
    expect(control([8, 4, 0])).toBe(0);
    expect(control([8, 4, 6])).toBe(4);
    expect(control([8, "blank", 4])).toBe("blank");
    expect(control(["new", "old"], "old")).toBe("old");
    expect(control([0, 4, 8], 4)).toBe(4);
  });

  it("averages the sheets of a batch, which may be numbered anew at each level", () => {
    const sheets = values.flatMap((value) => [value - 2, value, value + 2]);
    const levels = names.flatMap((name) => [name, name, name]);
    const batches = names.flatMap((_, i) => [i % 3, i % 3, i % 3]);
    const rows = compareWithControl(levels, sheets, undefined, batches, undefined, 0.05).levels;
    expect(rows).toEqual(plain(names, values));
    expect(rows[0]?.batches).toBe(3);
  });

  it("takes block effects out", () => {
    const blocks = names.map((_, i) => `day ${i % 3}`);
    const shifted = values.map((value, i) => value + 100 * (i % 3));
    const rows = compareWithControl(names, values, blocks, undefined, undefined, 0.05).levels;
    const same = compareWithControl(names, shifted, blocks, undefined, undefined, 0.05).levels;
    rows.forEach((row, i) => {
      if (row.against === undefined) return;
      expectRelative(same[i]?.against?.p as number, row.against.p, 1e-9);
      expectRelative(same[i]?.against?.estimate as number, row.against.estimate, 1e-12);
    });
    // Two-way analysis by hand: 152 within levels, less 4·Σ(block mean − 52)², with 11 − 3 − 2 degrees.
    const blockMeans = [0, 1, 2].map(
      (block) => values.filter((_, i) => i % 3 === block).reduce((sum, value) => sum + value) / 4,
    );
    const left = 152 - 4 * blockMeans.reduce((sum, mean) => sum + (mean - 52) ** 2, 0);
    const margin = (rows[1]?.against?.upper as number) - 11;
    // Three treatments at 6 degrees of freedom, as in dunnett-two-sided-05.
    expectRelative(margin, 3.09929 * Math.sqrt(((left / 6) * 2) / 3), 2e-6);
  });

  it("lets the control stand more often in every block", () => {
    const levels = [0, 0, 4, 8, 0, 0, 4, 8];
    const blocks = [1, 1, 1, 1, 2, 2, 2, 2];
    const given = [30, 31, 33, 36, 28, 27, 31, 35];
    const rows = compareWithControl(levels, given, blocks, undefined, undefined, 0.05).levels;
    expect(rows.map((row) => row.batches)).toEqual([4, 2, 2]);
    expect(rows[1]?.against?.estimate).toBe(3);
  });

  it.each(comparisons.incompleteBlocks.cases)(
    "takes the blocks out by least squares where not all are whole: $what",
    ({ levels, blocks, values: given, estimates, variance, degrees, p, spreads }) => {
      const found = compareWithControl(levels, given, blocks, undefined, undefined, 0.05);
      const against = found.levels.flatMap((row) => row.against ?? []);
      expect(found.isComplete).toBe(false);
      expect(found.degrees).toBe(degrees);
      expectRelative(found.deviation ** 2, variance, 1e-12);
      against.forEach((difference, i) => {
        expectRelative(difference.estimate, estimates[i] as number, 1e-12);
        if (spreads) expectRelative(difference.spread, spreads[i] as number, 1e-12);
        // Exact but for the case with six batches lost, whose correlations have more than one factor.
        const tolerance = spreads ? 1e-6 : 2e-4;
        expect(Math.abs(difference.p - (p[i] as number))).toBeLessThan(tolerance);
      });
    },
  );

  // Data: Montgomery, Design and Analysis of Experiments, four catalysts in batches with room for three, as
  // a university's page of examples reprints them. Each total less a third of its blocks' totals is −3,
  // −7/3, −4/3, 20/3; in a balanced design the effects are 3/8 of these (Yates 1936). Error: 81 − 55 − 22.75.
  it("has the effects of a balanced incomplete design by hand", () => {
    const levels = [1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4];
    const blocks = [1, 2, 4, 2, 3, 4, 1, 2, 3, 1, 3, 4];
    const times = [73, 74, 71, 75, 67, 72, 73, 75, 68, 75, 72, 75];
    const found = compareWithControl(levels, times, blocks, undefined, 1, 0.05);
    [71.375, 71.625, 72, 75].forEach((mean, i) => {
      expectRelative(found.levels[i]?.mean as number, mean, 1e-13);
    });
    expect(found.degrees).toBe(5);
    expectRelative(found.deviation ** 2, 3.25 / 5, 1e-12);
    const last = found.levels[3]?.against;
    expectRelative(last?.estimate as number, 3.625, 1e-13);
    // Every difference has the variance 2·3/8; three treatments at 5 degrees, as in dunnett-two-sided-05.
    const margin = 3.29315 * Math.sqrt(0.65 * 0.75);
    expectRelative((last?.upper as number) - 3.625, margin, 2e-6);
  });

  it("agrees with the plain way where blocks are whole", () => {
    const blocks = names.map((_, i) => i % 3);
    const whole = compareWithControl(names, values, blocks, undefined, undefined, 0.05);
    const { effects, spreads, correlations } = withinBlocks(
      Float64Array.from(values),
      names,
      blocks,
      "control",
    );
    for (const { level, against } of whole.levels) {
      if (against === undefined) continue;
      expectRelative(effects.get(level) as number, against.estimate, 1e-12);
      expectRelative(spreads.get(level) as number, 2 / 3, 1e-12);
    }
    for (const loading of loadingsOf(correlations)) expectRelative(loading, Math.SQRT1_2, 1e-12);
  });

  it("refuses a level that no block ties to the control", () => {
    expectRefusal(
      "impossible input",
      "Level 8 shares no block with the control 0, nor with a level that does. Make up a batch of 0 in block 3, or leave out level 8.",
      () =>
        compareWithControl(
          [0, 0, 4, 4, 8, 8],
          [1, 2, 4, 7, 9, 8],
          [1, 2, 1, 2, 3, 3],
          undefined,
          undefined,
          0.05,
        ),
    );
  });

  it.each([
    ["impossible input", "Value 2 of 3 is 0 or blank", [0, 4, 4], [1, 0, 2], undefined],
    ["impossible input", "The only level is 4", [4, 4], [1, 2], undefined],
    ["impossible input", "Control is 3, which is none of the levels 0, 4", [0, 4], [1, 2], 3],
    ["no answer", "2 batches of 2 levels leave nothing", [0, 4], [1, 2], undefined],
    ["no answer", "agree to the last digit", [0, 0, 4, 4], [0.1, 0.1, 0.3, 0.3], undefined],
  ] as const)("refuses with %s: %s", (kind, words, levels, given, control) => {
    expectRefusal(kind, words, () => plain([...levels], [...given], control));
  });

  it("does not depend on the order of the rows, nor on the unit of the values", () => {
    const rows = plain(names, values, "control");
    const order = fc.shuffledSubarray([...names.keys()], { minLength: names.length });
    fc.assert(
      fc.property(order, fc.double({ min: 0.01, max: 100, noNaN: true }), (places, unit) => {
        const again = plain(
          places.map((i) => names[i] as string),
          places.map((i) => unit * (values[i] as number)),
          "control",
        );
        for (const row of rows) {
          const twin = again.find((other) => other.level === row.level);
          expectRelative(twin?.mean as number, unit * row.mean, 1e-12);
          if (row.against) expectRelative(twin?.against?.p as number, row.against.p, 1e-9);
        }
      }),
      { numRuns: 30 },
    );
  });
});
