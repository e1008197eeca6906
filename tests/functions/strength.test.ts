import { describe, expect, test } from "vitest";
import {
  blank,
  column,
  emulateExcel,
  type HostCell,
  type HostError,
  row,
} from "../host/emulated-excel";
import { expectRelative } from "../model/expectations";
import certified from "../references/nonlinear-regression.json";

const excel = emulateExcel();
const message = (id: string, ...given: unknown[]) => (excel.one(id, ...given) as HostError).message;

const doses = [0, 2, 4, 6, 8, 12, 16];
const strengths = [40.3, 44.1, 46.2, 47.9, 48.4, 49.6, 49.8];
const numberAt = (table: HostCell[][], label: string, place = 1) =>
  table.find(([name]) => name === label)?.[place] as number;

describe("STRENGTH.INDEX, LENGTH and PAGE", () => {
  test("give the published interface's checks over a column, and refuse a blank", () => {
    expect(excel.call("STRENGTH.INDEX", column(3.6, 4.2), 60)).toEqual(column(60, 70));
    expect(message("STRENGTH.INDEX", 3.6, 0)).toContain("grammage is 0 or blank.");
    expectRelative(excel.one("STRENGTH.PAGE", 120, 0.2, 5, 70, 2.3, 0.4) as number, 59.4233, 1e-6);
    expect(message("STRENGTH.PAGE", 120, 0.2, 5, 70, 2.3, 40)).toContain("e.g. 0.03 for 3 %");
    expectRelative(excel.one("STRENGTH.LENGTH", 9.80665) as number, 1, 1e-15);
  });
});

describe("STRENGTH.RESPONSE", () => {
  test("fills a grid of doses and scales, and takes the shape in any case", () => {
    const grid = excel.call("STRENGTH.RESPONSE", column(0, 6), 40, 10, row(6, 12), "Hyperbolic");
    expect(grid[0]).toEqual([40, 40]);
    expectRelative(grid[1]?.[0] as number, 45, 1e-15);
    expectRelative(grid[1]?.[1] as number, 40 + 10 / 3, 1e-15);
    expect(message("STRENGTH.RESPONSE", 6, 40, 10, 6, "cubic")).toBe(
      'shape is "cubic". Give one of: exponential, hyperbolic, peaked, straight.',
    );
  });

  test("is inverted by DOSEFOR, a target out of reach in its own cell", () => {
    const targets = excel.call("STRENGTH.RESPONSE", column(1, 5, 9), 40, 10, 10, "peaked");
    const back = excel.call("STRENGTH.DOSEFOR", [...targets, [51]], 40, 10, 10, "peaked");
    [1, 5, 9].forEach((dose, i) => {
      expectRelative(back[i]?.[0] as number, dose, 1e-12);
    });
    expect(back[3]?.[0]).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("above the peak of 10"),
    });
  });

  test("is not read beyond the highest dose tried, of which a column may be given", () => {
    const answer = excel.call("STRENGTH.DOSEFOR", 45, 40, 10, 6, undefined, column(10, blank, 2));
    expect(answer.map(([cell]) => typeof cell)).toEqual(["number", "number", "object"]);
  });
});

describe("STRENGTH.FIT", () => {
  test.each(certified.cases)("meets $name through the bundle", (set) => {
    const table = excel.call(
      "STRENGTH.FIT",
      column(...set.doses),
      column(...set.strengths),
      set.shape,
      0,
    );
    expectRelative(numberAt(table, "gain"), set.gain, 3e-11);
    expectRelative(numberAt(table, "gain", 2), set.gainError, 3e-11);
    expectRelative(
      numberAt(table, "residual standard deviation"),
      set.residualStandardDeviation,
      1e-9,
    );
    expect(numberAt(table, "base")).toBe(0);
    expect(numberAt(table, "base", 2)).toBe(0);
    expect(numberAt(table, "points")).toBe(set.doses.length);
  });

  test("has its rows in a fixed order, whatever there is to say", () => {
    const order = [
      "parameter",
      "base",
      "gain",
      "scale",
      "residual standard deviation",
      "R²",
      "points",
      "corrected Akaike",
      "lack-of-fit p",
      "shape",
    ];
    const short = excel.call("STRENGTH.FIT", row(0, 3, 6, 12), row(40.1, 44.9, 47.2, 50.3));
    expect(short.map(([label]) => label)).toEqual(order);
    expect(short.every((line) => line.length === 5)).toBe(true);
    expect(short[7]?.[1]).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("3 points more"),
    });
    expect(short[8]?.[1]).toBe("");
    const long = excel.call(
      "STRENGTH.FIT",
      row(...doses, 4, 12),
      row(...strengths, 46.6, 49.3),
      "straight",
    );
    expect(long.map(([label]) => label)).toEqual(order);
    expect(long[3]).toEqual(["scale", 1, 0, 1, 1]);
    expect(numberAt(long, "lack-of-fit p")).toBeLessThan(0.05);
    expect(long[9]?.[1]).toBe("straight");
  });

  test("says which shape is best, and wants six points for it", () => {
    expect(excel.call("STRENGTH.FIT", row(...doses), row(...strengths), "BEST")[9]?.[1]).toBe(
      "exponential",
    );
    expect(
      excel.one("STRENGTH.FIT", row(0, 2, 4, 6, 8), row(40, 43, 45, 46, 47), "best"),
    ).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("Give at least 6"),
    });
  });

  test("averages the sheets of a batch, named by number or by text in any case", () => {
    const table = excel.call(
      "STRENGTH.FIT",
      column(0, 0, 3, 6, 6, 12, 20),
      column(40.2, 40.4, 45, 47.3, 47.1, 50.1, 51.3),
      undefined,
      undefined,
      column("a", "A", "b", 1, 1, "c", "d"),
    );
    expect(numberAt(table, "points")).toBe(5);
    const averaged = excel.call(
      "STRENGTH.FIT",
      column(0, 3, 6, 12, 20),
      column(40.3, 45, 47.2, 50.1, 51.3),
    );
    expectRelative(numberAt(table, "scale"), numberAt(averaged, "scale"), 1e-10);
  });

  test("drops pairs that are blank, and refuses half a pair", () => {
    const padded = excel.call("STRENGTH.FIT", column(...doses, blank), column(...strengths, blank));
    expect(padded).toEqual(excel.call("STRENGTH.FIT", column(...doses), column(...strengths)));
    expect(message("STRENGTH.FIT", column(0, 2, 4), column(40, blank, 44))).toContain(
      "strengths (2 of 3) is blank",
    );
    expect(message("STRENGTH.FIT", column(0, 2, 4), column(40, 0, 44))).toContain(
      "strengths (2 of 3) is 0 or blank",
    );
  });

  test("answers #N/A with the reason where gain and scale cannot be told apart", () => {
    expect(excel.one("STRENGTH.FIT", row(0, 2, 4, 6, 8), row(40, 42, 44, 46, 48))).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("gain and scale cannot be told apart"),
    });
    expect(
      excel.one(
        "STRENGTH.FIT",
        row(...doses),
        row(...strengths),
        undefined,
        40,
        undefined,
        row(1, 1, 1, 2, 2, 2, 2),
      ),
    ).toMatchObject({ code: "#VALUE!" });
  });
});

describe("STRENGTH.BAND", () => {
  const data = [column(...doses), column(...strengths)];

  test("gives a row for each of a column of doses, a bad one in its own row", () => {
    const rows = excel.call("STRENGTH.BAND", column(0, "x", 10, blank), ...data);
    expect(rows).toHaveLength(3);
    expect(rows.map((line) => line.length)).toEqual([3, 3, 3]);
    expect(rows[1]?.[0]).toMatchObject({
      code: "#VALUE!",
      message: 'dose is the text "x". Give 0 or more [kg/t].',
    });
    const table = excel.call("STRENGTH.FIT", ...data);
    expect(rows[0]).toEqual([3, 1, 4].map((place) => numberAt(table, "base", place)));
  });

  test("narrows with less confidence and refuses a percentage", () => {
    const [wide] = excel.call("STRENGTH.BAND", 5, ...data) as number[][];
    const [narrow] = excel.call(
      "STRENGTH.BAND",
      5,
      ...data,
      undefined,
      undefined,
      0.5,
    ) as number[][];
    expect((narrow as number[])[0]).toBeGreaterThan((wide as number[])[0] as number);
    expect(message("STRENGTH.BAND", 5, ...data, undefined, undefined, 95)).toContain(
      "confidence is 95.",
    );
    expect(message("STRENGTH.BAND", row(5, 6), ...data)).toContain("dose is wider than one cell.");
    expect(message("STRENGTH.BAND", -5, ...data)).toBe("dose is -5. Give 0 or more [kg/t].");
  });

  test("gives an error of the data once, not in every row", () => {
    expect(excel.one("STRENGTH.BAND", column(1, 2, 3), row(0, 5), row(40, 45))).toMatchObject({
      code: "#N/A",
    });
  });

  test("tells the observer what it took for each row", () => {
    const calls: { values(row: number, column: number): unknown[] }[] = [];
    excel.dosewright.observe((call) => calls.push(call as (typeof calls)[number]));
    excel.call("STRENGTH.BAND", column(3, 10), ...data);
    excel.call("STRENGTH.BAND", 7, ...data);
    excel.dosewright.observe(undefined);
    expect([...(calls[0]?.values(1, 0).slice(0, 2) ?? [])]).toEqual([10, doses]);
    expect(calls[1]?.values(0, 0)[0]).toBe(7);
  });
});

describe("STRENGTH.SAMPLE", () => {
  const data = [column(...doses), column(...strengths)];

  test("spills a row a curve whose columns STRENGTH.RESPONSE takes, with the spread of the band", () => {
    const curves = excel.call("STRENGTH.SAMPLE", ...data, 2000, 5) as number[][];
    const take = (place: number) => column(...curves.map((curve) => curve[place]));
    const results = excel
      .call("STRENGTH.RESPONSE", 5, take(0), take(1), take(2))
      .map(([cell]) => cell as number);
    const mean = results.reduce((a, b) => a + b) / results.length;
    const deviation = Math.sqrt(
      results.reduce((sum, value) => sum + (value - mean) ** 2, 0) / results.length,
    );
    const [[lower, estimate, upper]] = excel.call("STRENGTH.BAND", 5, ...data) as [
      [number, number, number],
    ];
    expectRelative(mean, estimate, 1e-3);
    // t of 4 degrees of freedom at 95 % is 2.7764.
    expectRelative(deviation, (upper - lower) / 2 / 2.7764, 0.06);
  });

  test("draws about the fit of the batches, days taken out", () => {
    const [days, gauge] = [strengths.map((_, i) => (i % 2 === 0 ? 1 : 2)), [1, -1]];
    const sheets = [doses, doses].flat();
    const measured = gauge.flatMap((off) =>
      strengths.map((value, i) => value + off + 3 * (days[i] as number)),
    );
    const [batch, block] = [[doses, doses].flat(), [days, days].flat()];
    const more = [column(...batch), column(...block)];
    const data = [column(...sheets), column(...measured)];
    const curves = excel.call("STRENGTH.SAMPLE", ...data, 2000, 5, "", "", ...more) as number[][];
    const fit = excel.call("STRENGTH.FIT", ...data, "", "", ...more) as number[][];
    [1, 2, 3].forEach((row) => {
      const values = curves.map((curve) => curve[row - 1] as number);
      const [, estimate, error] = fit[row] as [unknown, number, number];
      const mean = values.reduce((sum, value) => sum + value) / values.length;
      const spread = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
      expectRelative(mean, estimate, 1e-3);
      expectRelative(Math.sqrt(spread / values.length), error, 0.05);
    });
  });

  test("is the same for the same seed only, and takes no more curves than it says", () => {
    const one = excel.call("STRENGTH.SAMPLE", ...data, 4, 5);
    expect(excel.call("STRENGTH.SAMPLE", ...data, 4, 5)).toEqual(one);
    expect(excel.call("STRENGTH.SAMPLE", ...data, 4, 6)).not.toEqual(one);
    expect(message("STRENGTH.SAMPLE", ...data, 200_000, 5)).toContain(
      "Give a whole number from 1 to 100000.",
    );
    expect(message("STRENGTH.SAMPLE", ...data, 4, 5, "best")).toContain('shape is "best".');
  });
});
