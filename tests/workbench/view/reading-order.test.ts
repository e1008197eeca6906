import { describe, expect, test } from "vitest";
import { nextOf } from "../../../src/workbench/view/reading-order";

const at = (sheet: number, row: number, column: number) => ({ sheet, place: { row, column } });

describe("nextOf", () => {
  const list = [at(0, 9, 0), at(0, 9, 1), at(1, 0, 0)];

  test("goes on from the selected cell, also from between two, and round at the ends", () => {
    expect(nextOf(list, at(0, 0, 0), "next")).toBe(0);
    expect(nextOf(list, at(0, 9, 0), "next")).toBe(1);
    expect(nextOf(list, at(0, 20, 0), "next")).toBe(2);
    expect(nextOf(list, at(1, 0, 0), "next")).toBe(0);
    expect(nextOf(list, at(1, 0, 0), "previous")).toBe(1);
    expect(nextOf(list, at(0, 9, 0), "previous")).toBe(2);
  });
});
