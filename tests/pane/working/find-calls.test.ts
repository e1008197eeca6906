import { expect, test } from "vitest";
import type { Call } from "../../../src/cells/observer";
import { CallRecord } from "../../../src/host/call-record";
import type { SheetHost } from "../../../src/host/host";
import { findCalls, partsOf } from "../../../src/pane/working/find-calls";

const record = new CallRecord();
const host = {
  namespace: "WETEND",
  callsAt: (address: string) => record.at(address),
} as unknown as SheetHost;
record.remember({
  id: "PARTITION.EQUILIBRIUM",
  address: "'Mill log'!C4",
  arguments: [],
  answer: [
    [1, 2, 3],
    [4, 5, 6],
  ],
  by: "row",
  values: () => [],
});
const cell = (address: string, value: number | null, formula = "") => ({ address, formula, value });

test("a cell with a formula has its own calls", () => {
  expect(findCalls(host, cell("'Mill log'!C4", 1, "=WETEND.X()"))).toMatchObject({
    address: "'Mill log'!C4",
    row: 0,
    column: 0,
  });
});

test("the calls of a formula that stood in the cell before are left aside", () => {
  const call = (id: string): Call => ({
    id,
    address: "Log!A1",
    arguments: [],
    answer: [[1]],
    by: "cell",
    values: () => [],
  });
  for (const id of ["DOSE.PUMP", "DOSE.TARGET"]) record.remember(call(id));
  const idsOf = (formula: string) =>
    findCalls(host, cell("Log!A1", 1, formula))?.calls.map(({ id }) => id);
  expect(idsOf("=WETEND.DOSE.TARGET(A2,A3)")).toEqual(["DOSE.TARGET"]);
  expect(idsOf("=wetend.dose.pump(WETEND.DOSE.TARGET(A2,A3),1,1)")).toHaveLength(2);
  expect(idsOf("=dosesOfToday")).toHaveLength(2);
});

test("a cell that an answer spilled into leads to the cell of the formula", () => {
  expect(findCalls(host, cell("'Mill log'!E5", 6))).toMatchObject({
    address: "'Mill log'!C4",
    row: 1,
    column: 2,
  });
});

test.each([
  ["holds another value", cell("'Mill log'!E5", 7)],
  ["lies outside the answer", cell("'Mill log'!F5", 6)],
  ["is blank", cell("'Mill log'!E5", null)],
  ["has a formula of its own", cell("'Mill log'!E5", 6, "=A1")],
  ["stands on another sheet", cell("Other!E5", 6)],
])("a cell that %s has none", (_, one) => {
  expect(findCalls(host, one)).toBeUndefined();
});

test("an address falls into its sheet, as formulas write it, its row and its column", () => {
  expect(partsOf("Log!B4:C9")).toEqual({ sheet: "Log!", row: 3, column: 1 });
  expect(partsOf("'It''s ours'!A1")).toEqual({ sheet: "'It''s ours'!", row: 0, column: 0 });
});
