import { describe, expect, test } from "vitest";
import { column, emulateExcel, row } from "../host/emulated-excel";

const excel = emulateExcel();

describe("the REFINING family", () => {
  test("gives the published interface's checks", () => {
    expect(excel.one("REFINING.ENERGY", 600, 150, 5)).toBe(90);
    expect(excel.one("REFINING.EDGELOAD", 600, 150, 500, 20)).toBeCloseTo(2.7, 14);
  });

  test("fills a grid, and refuses in its own cell a power below the no-load power", () => {
    const grid = excel.call("REFINING.ENERGY", column(600, 100), 150, row(5, 10));
    expect(grid[0]).toEqual([90, 45]);
    expect(grid[1]?.[1]).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("below the no-load power of 150 kW"),
    });
  });
});
