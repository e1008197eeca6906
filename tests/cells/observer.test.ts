import { afterEach, expect, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { column, emulateExcel, HostError } from "../host/emulated-excel";

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
  expect(calls).toEqual([
    { id: "DOSE.TARGET", address: "Sheet1!A1", arguments: [[[6.5]], [[0.5]]], answer: [[13]] },
  ]);
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
