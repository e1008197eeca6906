import { expect, test } from "vitest";
import { answersWithBlock } from "../../../src/workbook/formula/future-functions";

test.each(["FILTER(A2:A401,B2:B401>600)", "sort(A1:A9)", " UNIQUE(A1:A9)", "VSTACK(A1,B1)"])(
  "%s may answer with more cells tomorrow",
  (formula) => {
    expect(answersWithBlock(formula)).toBe(true);
  },
);

test.each([
  "SUM(FILTER(A2:A401,B2:B401>600))",
  "FILTERXML(A1,B1)",
  "XLOOKUP(1,A1:A9,B1:B9)",
  "A1+1",
])("%s answers as it does", (formula) => {
  expect(answersWithBlock(formula)).toBe(false);
});
