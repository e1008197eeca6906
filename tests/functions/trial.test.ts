import { describe, expect, test } from "vitest";
import { blank, column, emulateExcel, HostError, row } from "../host/emulated-excel";
import statistics from "../references/trial-statistics.json";

const excel = emulateExcel();
const { data, p_two } = statistics.dunnett_example;
const levels = column(...Object.entries(data).flatMap(([name, values]) => values.map(() => name)));
const values = column(...Object.values(data).flat());

describe("TRIAL.LADDER", () => {
  test("reads a spacing without regard to case and spills a column", () => {
    expect(excel.call("TRIAL.LADDER", 1, 4, 3, "Ratio")).toEqual(column(0, 1, 2, 4));
  });

  test("takes no more steps than it says", () => {
    expect(excel.one("TRIAL.LADDER", 1, 4, 100_001)).toMatchObject({
      code: "#VALUE!",
      message: "steps is 100001. Give a whole number from 1 to 100000.",
    });
  });
});

describe("TRIAL.REPLICATES", () => {
  test("fills a grid of variations and differences, a bad one in its own cell", () => {
    const grid = excel.call("TRIAL.REPLICATES", column(0.04, 4), row(0.05, 0.1));
    expect(grid[0]).toEqual([12, 4]);
    expect(grid[1]?.[0]).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("e.g. 0.03 for 3 %"),
    });
  });

  test("has no answer for a difference too small to find", () => {
    expect(excel.one("TRIAL.REPLICATES", 0.5, 0.0001)).toMatchObject({ code: "#N/A" });
  });
});

describe("TRIAL.ORDER", () => {
  test("is the same for a row and a column of doses", () => {
    const order = excel.call("TRIAL.ORDER", column(0, 4, 8), 3, 5);
    expect(order).toHaveLength(10);
    expect(excel.call("TRIAL.ORDER", row(0, 4, 8), 3, 5)).toEqual(order);
  });

  test("wants its seed", () => {
    expect(excel.one("TRIAL.ORDER", column(0, 4), 3, 1.5)).toMatchObject({ code: "#VALUE!" });
  });
});

describe("TRIAL.HANDSHEET", () => {
  test("is a table with labels for one case, and a row a case for a column of doses", () => {
    expect(excel.call("TRIAL.HANDSHEET", 10, 0.003, 0.01).map(([label]) => label)).toEqual([
      "fibre [g]",
      "stock [mL]",
      "additive [mg]",
      "solution [mL]",
    ]);
    const rows = excel.call("TRIAL.HANDSHEET", column(0, 5, 10), 0.003, 0.01);
    expect(rows.map((line) => line.length)).toEqual([4, 4, 4]);
    expect(rows.map((line) => line[2])).toEqual([0, 6, 12]);
  });

  test("takes stock in per cent for what it is", () => {
    expect(excel.one("TRIAL.HANDSHEET", 10, 0.3, 0.01)).toMatchObject({ code: "#VALUE!" });
  });
});

describe("TRIAL.MAKEDOWN", () => {
  test("refuses a strength that the product does not hold", () => {
    expect(excel.one("TRIAL.MAKEDOWN", 1, 0.5, 0.3)).toMatchObject({
      code: "#VALUE!",
      message:
        "Strength is 0.5, and the product as received holds 0.3 of dry active additive. Give a strength up to that.",
    });
  });
});

describe("TRIAL.COMPARE", () => {
  test("answers the worked example with the control that is named", () => {
    const [head, ...rows] = excel.call(
      "TRIAL.COMPARE",
      levels,
      values,
      undefined,
      undefined,
      "Control",
    );
    expect(head).toEqual([
      "level",
      "batches",
      "mean",
      "standard deviation",
      "difference",
      "lower",
      "upper",
      "p",
    ]);
    expect(rows.map(([level]) => level)).toEqual(["control", "a", "b", "c"]);
    expect(rows[0]?.slice(4)).toEqual(["", "", "", ""]);
    rows.slice(1).forEach((line, i) => {
      expect(line[7]).toBeCloseTo(p_two[i] as number, 8);
    });
  });

  test("takes names for the same whatever their case", () => {
    const shouted = levels.map(([name], i) => [i % 3 === 0 ? name : String(name).toUpperCase()]);
    expect(excel.call("TRIAL.COMPARE", shouted, values)).toEqual(
      excel.call("TRIAL.COMPARE", levels, values),
    );
  });

  test("drops rows that are blank in both, and refuses a level without its value", () => {
    const answer = excel.call("TRIAL.COMPARE", levels, values);
    const more = (cell: unknown) => [[cell]];
    expect(
      excel.call("TRIAL.COMPARE", [...levels, ...more(blank)], [...values, ...more(blank)]),
    ).toEqual(answer);
    expect(
      excel.one("TRIAL.COMPARE", [...levels, ...more("c")], [...values, ...more(blank)]),
    ).toMatchObject({ code: "#VALUE!" });
  });

  test("refuses a value that a blank cell may have become", () => {
    const desktop = emulateExcel(0);
    const answer = desktop.one(
      "TRIAL.COMPARE",
      [...levels, ["c"]],
      [...values, [blank]],
    ) as HostError;
    expect(answer.code).toBe("#VALUE!");
    expect(answer.message).toContain("Value 13 of 13 is 0 or blank.");
  });

  test("averages sheets of batches and takes blocks out", () => {
    const doses = [0, 0, 0, 0, 4, 4, 4, 4];
    const answer = excel.call(
      "TRIAL.COMPARE",
      column(...doses),
      column(30, 32, 35, 37, 33, 35, 39, 41),
      column(...doses.map((_, i) => (i % 4 < 2 ? "Monday" : "Tuesday"))),
      column(...doses.map((_, i) => Math.floor(i / 2))),
    );
    expect(answer[1]?.slice(0, 3)).toEqual([0, 2, 33.5]);
    expect(answer[2]?.slice(0, 5)).toEqual([4, 2, 37, Math.sqrt(18), 3.5]);
  });

  test("hands on the error of a cell", () => {
    const broken = new HostError("#DIV/0!");
    expect(excel.one("TRIAL.COMPARE", column(0, 0, 4), column(1, 2, broken))).toMatchObject({
      code: "#DIV/0!",
    });
  });
});

describe("TRIAL.SETTLING", () => {
  test("works down a column", () => {
    const [one, two] = excel.call("TRIAL.SETTLING", column(100, 200), 50);
    expect(two?.[0]).toBeCloseTo(2 * (one?.[0] as number), 12);
  });
});
