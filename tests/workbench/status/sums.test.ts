import { FUNCTION_NAMES_MATH, FUNCTION_NAMES_STATISTICAL } from "@univerjs/engine-formula";
import { expect, test } from "vitest";
import { toldOf } from "../../../src/workbench/status/sums";

const { AVERAGE, COUNT, MAX, MIN } = FUNCTION_NAMES_STATISTICAL;
const all = [FUNCTION_NAMES_MATH.SUM, AVERAGE, MIN, MAX, COUNT];
const values = all.map((func) => ({ func, value: 1 }));

const told = (pattern: string | null, formats: (string | undefined)[]) => {
  const state = toldOf({ values, pattern }, formats);
  return { pattern: state.pattern, of: state.values.map(({ func }) => func) };
};

test("numbers are told in the format of the first", () => {
  expect(told("0.0", ["0.0", undefined])).toEqual({ pattern: "0.0", of: all });
});

test("days have no sum, and are told as days, also where a word stands first", () => {
  const expected = { pattern: "yyyy-mm-dd", of: [AVERAGE, MIN, MAX, COUNT] };
  expect(told("yyyy-mm-dd", ["yyyy-mm-dd", "mmm yy"])).toEqual(expected);
  expect(told(null, ["yyyy-mm-dd"])).toEqual(expected);
});

test("days and numbers together are counted only", () => {
  expect(told("yyyy-mm-dd", ["yyyy-mm-dd", "0.0"])).toEqual({ pattern: null, of: [COUNT] });
  expect(told("0.0", ["0.0", "yyyy-mm-dd"])).toEqual({ pattern: null, of: [COUNT] });
});

test("lengths of time add up", () => {
  expect(told("[h]:mm", ["[h]:mm", "[h]:mm"])).toEqual({ pattern: "[h]:mm", of: all });
});
