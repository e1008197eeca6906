import { expect, test } from "vitest";
import { fromGrid, nameFromGrid, nameToGrid, toGrid } from "../../src/engine/dialect";

test.each([
  ["SUM(A1:A3)", "=SUM(A1:A3)"],
  ["--TRUE", "=--(TRUE)"],
  ["1-false*2", "=1-(false)*2"],
  ["-TRUE()", "=-TRUE()"],
  ["-rate^2", "=-(rate)^2"],
  ["2*- rate", "=2*- (rate)"],
  ["1-rate", "=1-rate"],
  ["--rate", "=--(rate)"],
  ['-"3"', '=-("3")'],
  ["SUM(-{1,-2},3)", "=SUM(-({1,-2}),3)"],
  ["5*-0", "=5*-(0)"],
  ["-A1+-B2:C3", "=-A1+-B2:C3"],
  ["-SUM(A1)-(A2)", "=-SUM(A1)-(A2)"],
  ["-Log[Dose]", "=-Log[Dose]"],
  ["IF(A1<-rate,1)", "=IF(A1<-(rate),1)"],
  ['"-TRUE"&A1', '="-TRUE"&A1'],
  ["SUM(B4#)", "=SUM(ANCHORARRAY(B4))"],
  ["MAX('Mill log'!$B$4#)", "=MAX(ANCHORARRAY('Mill log'!$B$4))"],
  ["'Mill log'!A1+'Mill log'!$B$4#", "='Mill log'!A1+ANCHORARRAY('Mill log'!$B$4)"],
  ['A1&" B4# "', '=A1&" B4# "'],
  ["Log[Share '#1]", "=Log[Share '#1]"],
])("%s goes into the grid as %s, and comes back", (formula, inGrid) => {
  expect(toGrid(formula)).toBe(inGrid);
  expect(fromGrid(inGrid)).toBe(formula);
});

test.each([
  ["A1>=0.50", "=A1>=0.5"],
  [".5+1e3-2.0E-7", "=0.5+1000-2e-7"],
  ["LOG10(A1)+'1.50'!B2", "=LOG10(A1)+'1.50'!B2"],
  ["SUM(3:05)", "=SUM(3:05)"],
  ['"0.50"&A1', '="0.50"&A1'],
])("%s goes into the grid as %s", (formula, inGrid) => {
  expect(toGrid(formula)).toBe(inGrid);
});

test.each([
  ["Log!$B$4:$B$33", "Log!$B$4:$B$33"],
  ["'Mill log'!$B$4", "'Mill log'!$B$4"],
  ["0.25", "=(0.25)"],
  ["SUM(Log!$B$4:$B$33)+1", "=(SUM(Log!$B$4:$B$33)+1)"],
])("the name for %s goes into the grid as %s, and comes back", (formula, inGrid) => {
  expect(nameToGrid(formula)).toBe(inGrid);
  expect(nameFromGrid(inGrid)).toBe(formula);
});
