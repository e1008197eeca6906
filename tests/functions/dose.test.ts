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
