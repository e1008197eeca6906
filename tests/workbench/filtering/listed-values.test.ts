import { expect, test } from "vitest";
import { chosenValues, listedValues } from "../../../src/workbench/filtering/listed-values";
import { type SeenCell, testOf } from "../../../src/workbench/filtering/passes";
import { serialDate } from "../../../src/workbook/dates";

const day = serialDate(2025, 9, 1);
const cells: SeenCell[] = [
  { value: "foam", text: "foam", isDate: false },
  { value: null, text: "", isDate: false },
  { value: 7.251, text: "7.3", isDate: false },
  { value: "Foam", text: "Foam", isDate: false },
  { value: 7.25, text: "7.3", isDate: false },
  { value: { error: "#N/A" }, text: "#N/A", isDate: false },
  { value: "", text: "", isDate: false },
  { value: 2, text: "2.0", isDate: false },
  { value: day, text: "Sep 2025", isDate: true },
  { value: day + 1.5, text: "Sep 2025", isDate: true },
];

test("each value is there once as it shows, in order, with how often it is there", () => {
  expect(listedValues(cells).map(({ text, count }) => [text, count])).toEqual([
    ["2.0", 1],
    ["7.3", 2],
    ["Sep 2025", 2],
    ["foam", 2],
    ["#N/A", 1],
    ["", 2],
  ]);
});

test("what is chosen of them passes, and nothing else does", () => {
  const listed = listedValues(cells);
  for (const one of listed) {
    const passes = testOf(chosenValues([one]));
    const texts = cells.filter((cell) => passes?.(cell)).map(({ text }) => text.toLowerCase());
    expect(texts).toEqual(Array(one.count).fill(one.text.toLowerCase()));
  }
});

test("days are written as days, moments with their time", () => {
  expect(chosenValues(listedValues(cells)).dates).toEqual([
    [2025, 9, 1],
    [2025, 9, 2, 12, 0, 0],
  ]);
});
