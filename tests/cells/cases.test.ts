import { describe, expect, test } from "vitest";
import { blank, column, emulateExcel, type HostError, row } from "../host/emulated-excel";

const excel = emulateExcel();
const message = (cell: unknown) => (cell as HostError).message;
const surfaces = row(1.5, 8, 12);
const capacities = row(8, 10, 1.667);
const halfLoads = row(20, 11, 1);
const shares = row(0.55, 0.25, 0.2);

describe("one case", () => {
  test("answers the way that the vectors lie", () => {
    const across = excel.call("PARTITION.AREA", row(0.8, 0.2), row(1.5, 8));
    const down = excel.call("PARTITION.AREA", column(0.8, 0.2), column(1.5, 8));
    expect(across).toHaveLength(1);
    expect(down).toEqual((across[0] ?? []).map((cell) => [cell]));
  });

  test("takes whole columns: blank cells at the end are cut", () => {
    const answer = excel.call(
      "PARTITION.AREA",
      column(0.8, 0.2, blank, blank),
      column(1.5, 8, blank, blank),
    );
    expect(answer).toHaveLength(2);
  });

  test("refuses vectors of unequal length, naming both", () => {
    const cell = excel.one("PARTITION.AREA", row(0.8, 0.2), row(1.5, 8, 12));
    expect(message(cell)).toBe("shares has 2 values and surfaces has 3. Give as many of both.");
  });

  test("names the place of a bad value", () => {
    const cell = excel.one("PARTITION.AREA", row(0.8, 0.2), row(1.5, 0));
    expect(message(cell)).toBe("surfaces (2 of 2) is 0 or blank. Give a number above 0 [m²/g].");
  });

  test("takes one number for all where the interface says so", () => {
    const one = excel.one("RETENTION.OVERALL", row(1, 5), row(0.9, 0.6), 0.9, 0.5);
    const each = excel.one(
      "RETENTION.OVERALL",
      row(1, 5),
      row(0.9, 0.6),
      row(0.9, 0.9),
      row(0.5, 0.5),
    );
    expect(one).toBe(each);
  });

  test("refuses a block where only one row or column makes sense", () => {
    const block = [...row(1, 5), ...row(2, 6)];
    const cell = excel.one("RETENTION.OVERALL", block, row(0.9, 0.6), 0.9, 0.5);
    expect(message(cell)).toBe("amounts is a block of 2 × 2 cells. Give one row or one column.");
  });
});

describe("a log of days", () => {
  const days = [
    [0.55, 0.25, 0.2],
    [0.6, 0.2, 0.2],
    [0.5, 0.3, 0.2],
  ];

  test("gives each day the answer that it has alone", () => {
    const doses = column(7, 8, 9);
    const log = excel.call(
      "PARTITION.EQUILIBRIUM",
      doses,
      0.03,
      days,
      surfaces,
      capacities,
      halfLoads,
    );
    const alone = days.map(
      (day, i) =>
        excel.call("PARTITION.EQUILIBRIUM", 7 + i, 0.03, [day], surfaces, capacities, halfLoads)[0],
    );
    expect(log).toEqual(alone);
  });

  test("comes from a column of doses alone, too", () => {
    const log = excel.call(
      "PARTITION.EQUILIBRIUM",
      column(7, 8),
      0.03,
      shares,
      surfaces,
      capacities,
      halfLoads,
    );
    expect(log).toHaveLength(2);
    expect(log[1]).toHaveLength(4);
  });

  test("shows the error of a bad day across its own row only", () => {
    const broken = [days[0], [0.6, "x", 0.2], [0.5, 0.3, 0.1]];
    const log = excel.call(
      "PARTITION.EQUILIBRIUM",
      7,
      0.03,
      broken,
      surfaces,
      capacities,
      halfLoads,
    );
    expect(log[0]?.every((cell) => typeof cell === "number")).toBe(true);
    expect(log[1]?.map(message)).toEqual(
      Array(4).fill(
        'shares (2 of 3) is the text "x". Give a fraction from 0 to 1, e.g. 0.03 for 3 %.',
      ),
    );
    expect(message(log[2]?.[0])).toMatch(/sum to 0\.9\./);
  });

  test("cuts blank rows at the end", () => {
    const withBlanks = [...days, [blank, blank, blank]];
    expect(excel.call("PARTITION.AREA", withBlanks, surfaces)).toHaveLength(3);
  });

  test("refuses doses in a row, since a case is a row", () => {
    const cell = excel.one(
      "PARTITION.EQUILIBRIUM",
      row(7, 8),
      0.03,
      shares,
      surfaces,
      capacities,
      halfLoads,
    );
    expect(message(cell)).toBe(
      "dose is wider than one cell. Give one cell, or a column with one case a row.",
    );
  });

  test("refuses logs of unequal length, naming both", () => {
    const cell = excel.one(
      "PARTITION.EQUILIBRIUM",
      column(7, 8),
      0.03,
      days,
      surfaces,
      capacities,
      halfLoads,
    );
    expect(message(cell)).toBe("dose has 2 rows and shares has 3. Give ranges of one length.");
  });
});
