import { describe, expect, test } from "vitest";
import type { Call } from "../../../src/cells/observer";
import { CallRecord } from "../../../src/host/call-record";
import type { SheetHost } from "../../../src/host/host";
import { findCalls, partsOf, placeIn } from "../../../src/pane/working/find-calls";

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
const formula = "=WETEND.PARTITION.EQUILIBRIUM(A1,A2)";
const spilledFrom = { address: "'Mill log'!C4", formula, value: 1 };
const cell = (address: string, value: number | string | null, formula = "") => ({
  address,
  formula,
  value,
});

test("a cell with a formula has its own calls", () => {
  expect(findCalls(host, cell("'Mill log'!C4", 1, formula))).toMatchObject({
    address: "'Mill log'!C4",
    formula,
    place: { row: 0, column: 0 },
  });
});

const log = (id: string, given: number): Call => ({
  id,
  address: "Log!A1",
  arguments: [given],
  answer: [[1]],
  by: "cell",
  values: () => [],
});
const toldIn = (formula: string) => findCalls(host, cell("Log!A1", 1, formula))?.calls ?? [];

test("the calls of a formula that stood in the cell before are left aside", () => {
  for (const id of ["DOSE.PUMP", "DOSE.TARGET"]) record.remember(log(id, 1));
  const idsOf = (formula: string) => toldIn(formula).map(({ id }) => id);
  expect(idsOf("=WETEND.DOSE.TARGET(A2,A3)")).toEqual(["DOSE.TARGET"]);
  expect(idsOf("=wetend.dose.pump(WETEND.DOSE.TARGET(A2,A3),1,1)")).toHaveLength(2);
  expect(idsOf("=dosesOfToday")).toHaveLength(2);
  expect(idsOf("")).toEqual([]);
});

test("a function that the formula writes twice is told twice, and not more often", () => {
  for (const given of [5, 6, 7]) record.remember(log("COST.BUDGET", given));
  const given = (formula: string) => toldIn(formula).map((call) => call.arguments[0]);
  expect(given("=WETEND.COST.BUDGET(A2)-WETEND.COST.BUDGET(A3)")).toEqual([6, 7]);
  expect(given("=WETEND.COST.BUDGET(A2)")).toEqual([7]);
});

test("a cell that an answer spilled into leads to the formula and to its place in the answer", () => {
  expect(findCalls(host, { ...cell("'Mill log'!E5", 6), spilledFrom })).toMatchObject({
    address: "'Mill log'!C4",
    formula,
    place: { row: 1, column: 2 },
  });
});

test("a value that the formula made itself has the calls, but no place in their answer", () => {
  expect(findCalls(host, { ...cell("'Mill log'!E5", 60), spilledFrom })?.place).toBeUndefined();
});

test.each([
  ["is blank", cell("'Mill log'!E5", null)],
  ["has a formula of its own", cell("'Mill log'!E5", 6, "=A1")],
])("a cell that %s has none", (_, one) => {
  expect(findCalls(host, one)).toBeUndefined();
});

describe("the place of a value in an answer", () => {
  const answer = [
    ["period", "price", "usage"],
    [1, -375, 0],
    [2, 0, 141],
    ["total", -375, 141],
  ];
  test.each([
    ["as it spilled", "period", { row: 2, column: 2 }, 141, { row: 2, column: 2 }],
    ["behind a header and a label", -375, { row: 0, column: 0 }, -375, { row: 1, column: 1 }],
    ["of several alike, as far behind", -375, { row: 1, column: 0 }, 0, { row: 2, column: 1 }],
    ["of the last row alone", -375, { row: 0, column: 1 }, 141, { row: 3, column: 2 }],
    ["nowhere", 8, { row: 0, column: 0 }, 8, undefined],
  ])("%s", (_, first, behind, value, place) => {
    expect(placeIn(answer, first, behind, value)).toEqual(place);
  });

  test("an error is found by its code", () => {
    const failing = [["dose"], [{ code: "#N/A" }]];
    const behind = { row: 1, column: 0 };
    expect(placeIn(failing, "dose", behind, "#N/A")).toEqual({ row: 1, column: 0 });
  });
});

test("an address falls into its sheet, as formulas write it, its row and its column", () => {
  expect(partsOf("Log!B4:C9")).toEqual({ sheet: "Log!", row: 3, column: 1 });
  expect(partsOf("'It''s ours'!A1")).toEqual({ sheet: "'It''s ours'!", row: 0, column: 0 });
});
