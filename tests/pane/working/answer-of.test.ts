import { expect, test } from "vitest";
import type { Call } from "../../../src/cells/observer";
import { answerOf } from "../../../src/pane/working/answer-of";

const call = (by: Call["by"], answer: unknown) => ({ by, answer }) as Call;
const budget = call("whole", [
  ["period", "output [t]", "cost [money]"],
  ["Jan", 9440, 58308],
  ["total", 9440, 58308],
]);
const summary = call("whole", [
  ["mean", 2.5],
  ["median", 2.4],
]);

test("a number of a table is named by its row and its column", () => {
  expect(answerOf(budget, { row: 1, column: 2 }, "")).toEqual({
    name: "Jan, cost",
    value: 58308,
    unit: "money",
  });
  const months = call("whole", [
    ["period", "price [money]"],
    [9, 2475.27],
  ]);
  expect(answerOf(months, { row: 1, column: 1 }, "")?.name).toBe("period 9, price");
  expect(answerOf(summary, { row: 1, column: 1 }, "")?.name).toBe("median");
});

test("a header or a label is no answer, nor is an error", () => {
  expect(answerOf(budget, { row: 0, column: 0 }, "")).toBeUndefined();
  expect(answerOf(budget, { row: 2, column: 0 }, "")).toBeUndefined();
  expect(answerOf(call("cell", [[{ code: "#N/A" }]]), { row: 0, column: 0 }, "")).toBeUndefined();
});

test("a number that is found by itself has the unit of what comes back, where there is one", () => {
  const prices = call("cell", [[0.775], [0.78]]);
  const place = { row: 1, column: 0 };
  const price = { name: "", value: 0.78, unit: "money/kg" };
  expect(answerOf(prices, place, "Price of dry active additive [money/kg].")).toEqual(price);
  expect(answerOf(prices, place, "Table [t, kg].")?.unit).toBe("");
});
