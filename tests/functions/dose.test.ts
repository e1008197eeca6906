import { describe, expect, test } from "vitest";
import { column, emulateExcel, row } from "../host/emulated-excel";

const excel = emulateExcel();

describe("DOSE.PUMP", () => {
  test("gives the flow of the published interface's check", () => {
    expect(excel.one("DOSE.PUMP", 8, 9.3, 0.03, 1.01)).toBeCloseTo(2455.446, 3);
  });
  test("fills a grid from a column of doses and a row of throughputs", () => {
    expect(excel.call("DOSE.PUMP", column(4, 8), row(9, 18), 0.03)).toEqual([
      [1200, 2400],
      [2400, 4800],
    ]);
  });
});

describe("throughput", () => {
  test("comes from the reel, or from the stock line", () => {
    expect(excel.one("DOSE.THROUGHPUT", 800, 5, 100)).toBeCloseTo(22.32, 12);
    expect(excel.one("DOSE.STOCKFLOW", 400, 0.035)).toBeCloseTo(14, 12);
    expect(excel.one("DOSE.STOCKFLOW", 400, 3.5)).toMatchObject({ code: "#VALUE!" });
  });
});

describe("DOSE.SURFACELIMIT", () => {
  test("answers a block of furnishes, one a row, a bad one in its own row", () => {
    const shares = [
      [0.55, 0.25, 0.2],
      [0.6, 0.4, 0],
      [0.6, 0.2, 0.1],
    ];
    const answer = excel.call("DOSE.SURFACELIMIT", shares, row(1.5, 8, 12), row(8, 10, 1.667));
    expect(answer[0]?.[0]).toBeCloseTo(30.6008, 9);
    expect(answer[1]?.[0]).toBeCloseTo(39.2, 9);
    expect(answer[2]?.[0]).toMatchObject({ code: "#VALUE!" });
  });
});
