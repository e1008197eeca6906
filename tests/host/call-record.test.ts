import { describe, expect, test, vi } from "vitest";
import type { Call } from "../../src/cells/observer";
import { CallRecord } from "../../src/host/call-record";
import { placeKey } from "../../src/host/place";
import { emulateExcel } from "./emulated-excel";

const call = (address: string | undefined, id = "DOSE.PUMP", cells = 1): Call => ({
  id,
  address,
  arguments: [new Array(cells).fill([8])],
  answer: [[1]],
  by: "cell",
  values: () => [8],
});

describe("the record of calls", () => {
  test("keeps the calls of a cell's latest computation, in the order in which they ended", () => {
    let now = 0;
    const record = new CallRecord(1000, () => now);
    const calls = ["A.B", "C.D", "A.B"].map((id) => call("Log!B4", id));
    for (const one of calls) record.remember(one);
    expect(record.at("Log!B4")).toEqual(calls);
    now = 1000;
    const later = call("Log!B4", "A.B");
    record.remember(later);
    expect(record.at("Log!B4")).toEqual([calls[1], later]);
  });

  test("keeps the last few calls of a formula that calls one function over and over", () => {
    const record = new CallRecord(1000, () => 0);
    for (let i = 0; i < 100; i++) record.remember(call("Log!B4"));
    expect(record.at("Log!B4")).toHaveLength(8);
  });

  test("finds a cell however its address is written", () => {
    const record = new CallRecord();
    record.remember(call("'Mill log'!B4"));
    expect(record.at("Mill log!$B$4")).toHaveLength(1);
    expect(record.at("'MILL LOG'!b4")).toHaveLength(1);
    expect(record.at("Mill log!B5")).toHaveLength(0);
    expect(placeKey("'It''s ours'!A1")).toBe("it's ours!a1");
  });

  test("forgets the cells computed longest ago when it grows too large, but never the latest", () => {
    let now = 0;
    const record = new CallRecord(100, () => (now += 1000));
    record.remember(call("S!A1", "DOSE.PUMP", 40));
    record.remember(call("S!A2", "DOSE.PUMP", 40));
    record.remember(call("S!A1", "DOSE.PUMP", 40));
    record.remember(call("S!A3", "DOSE.PUMP", 40));
    expect(["A1", "A2", "A3"].map((cell) => record.at(`S!${cell}`).length)).toEqual([1, 0, 1]);
    record.remember(call("S!A4", "DOSE.PUMP", 5000));
    expect(["A1", "A3", "A4"].map((cell) => record.at(`S!${cell}`).length)).toEqual([0, 0, 1]);
  });

  test("tells its listeners the cell until they stop, and passes over calls without one", () => {
    const record = new CallRecord();
    const listener = vi.fn();
    const stop = record.watch(listener);
    record.remember(call("S!A1"));
    record.remember(call(undefined));
    stop();
    record.remember(call("S!A2"));
    expect(listener.mock.calls).toEqual([["S!A1"]]);
  });

  test("takes what the built functions report: arguments, answer, and the error of a failed call", () => {
    const excel = emulateExcel();
    const record = new CallRecord();
    excel.dosewright.observe(record.remember as (call: unknown) => void);
    excel.call("DOSE.TARGET", 6, 0.75);
    expect(record.at("Sheet1!A1")).toMatchObject([
      { id: "DOSE.TARGET", arguments: [[[6]], [[0.75]]], answer: [[8]] },
    ]);
    excel.call("DOSE.TARGET", 6, 75);
    expect(record.at("Sheet1!A1").at(-1)?.answer).toMatchObject({ code: "#VALUE!" });
  });
});
