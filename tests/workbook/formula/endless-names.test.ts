import { expect, test } from "vitest";
import { endlessNames } from "../../../src/workbook/formula/endless-names";

const endless = (names: Readonly<Record<string, string>>) =>
  [...endlessNames(Object.entries(names).map(([name, formula]) => ({ name, formula })))].sort();

test("a name that stands for itself, at once or through others, never ends, nor does what reads it", () => {
  expect(endless({ Dose: "dose+1" })).toEqual(["dose"]);
  expect(endless({ a: "b*2", b: "SUM(c,1)", c: "A", d: "c", e: "Log!$A$1" })).toEqual([
    "a",
    "b",
    "c",
    "d",
  ]);
  expect(endless({ countdown: "LAMBDA(n,IF(n<1,0,countdown(n-1)))" })).toEqual(["countdown"]);
});

test("names that double from one to the next end somewhere that no machine reaches", () => {
  const doubling = Object.fromEntries(
    Array.from({ length: 41 }, (_, at) => [`n_${at}`, at === 0 ? "1" : `n_${at - 1}+n_${at - 1}`]),
  );
  expect(endless(doubling)).toContain("n_40");
  expect(endless(doubling)).not.toContain("n_8");
});

test("names that read one another in any order, twice or by two scopes, are whole", () => {
  expect(endless({ total: "base+base+rate", base: "rate*2", rate: "0.5" })).toEqual([]);
  const scoped = ["Log", "Plan"].map((sheet) => ({ name: "dose", formula: "rate", sheet }));
  expect(endlessNames([...scoped, { name: "rate", formula: "1" }]).size).toBe(0);
});

test("a chain of twenty thousand names is followed to where it is too long", () => {
  const chain = Array.from({ length: 20_000 }, (_, at) => ({
    name: `n_${at}`,
    formula: `n_${at + 1}`,
  }));
  expect(endlessNames(chain).size).toBeGreaterThan(9_000);
});
