import { afterEach, expect, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { column, emulateExcel, HostError, row } from "../host/emulated-excel";

const excel = emulateExcel();
const calls: Call[] = [];
const watch = () => excel.dosewright.observe((call) => calls.push(call as Call));

afterEach(() => {
  excel.dosewright.observe(undefined);
  calls.length = 0;
});

test("the observer sees the cell, the function, its arguments and the answer", () => {
  watch();
  excel.call("DOSE.TARGET", 6.5, 0.5);
  expect(calls).toMatchObject([
    { id: "DOSE.TARGET", address: "Sheet1!A1", arguments: [[[6.5]], [[0.5]]], answer: [[13]] },
  ]);
});

test("a call tells the values behind one cell of its answer, defaults included", () => {
  watch();
  excel.call("DOSE.PUMP", column(4, 8), row(9, 18), 0.03);
  expect(calls[0]?.by).toBe("cell");
  expect(calls[0]?.values(1, 0)).toEqual([8, 9, 0.03, 1]);
  expect(calls[0]?.values(0, 1)).toEqual([4, 18, 0.03, 1]);
  excel.call(
    "PARTITION.AREA",
    [
      [1, 1],
      [1, 3],
    ],
    row(1, 2),
  );
  expect(calls[1]?.values(1, 0)).toEqual([[1, 3], [1, 2], undefined]);
  excel.call("PARTITION.AREA", column(1, 3), column(1, 2));
  expect(calls[2]?.values(1, 0)).toEqual([[1, 3], [1, 2], undefined]);
  excel.call("RETENTION.OVERALL", row(1, 1), row(0.5, 0.6), 0.9, 0.5);
  expect(calls[3]?.values(0, 0)).toEqual([
    [1, 1],
    [0.5, 0.6],
    [0.9, 0.9],
    [0.5, 0.5],
  ]);
  excel.call("RETENTION.BALANCE", 10, 0.15, 0.95, 0.5);
  expect(calls.slice(1).map(({ by }) => by)).toEqual(["row", "row", "row", "whole"]);
  expect(calls[4]?.values(2, 1)).toEqual([10, 0.15, 0.95, 0.5]);
});

test("the values behind a cell that failed are refused as the cell was", () => {
  watch();
  excel.call("DOSE.TARGET", column(6.5, -1), 0.5);
  expect(calls[0]?.values(0, 0)).toEqual([6.5, 0.5]);
  expect(() => calls[0]?.values(1, 0)).toThrow("retained is -1.");
});

test("the observer sees a failed call with its message", () => {
  watch();
  excel.call("DOSE.TARGET", 6.5, 2);
  expect(calls[0]?.answer).toBeInstanceOf(HostError);
  excel.call("DOSE.TARGET", column(6.5, -1), 0.5);
  expect(calls[1]?.answer).toMatchObject([[13], [{ code: "#VALUE!" }]]);
});

test("nobody is told once the observer is gone", () => {
  watch();
  excel.dosewright.observe(undefined);
  excel.call("DOSE.TARGET", 6.5, 0.5);
  expect(calls).toEqual([]);
});
