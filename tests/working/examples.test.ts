import { describe, expect, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { toldFunctions } from "../../src/working";
import { emulateExcel } from "../host/emulated-excel";
import { runExample } from "../host/example";
import { callsDuring, expectAgreement, expectSoundWords } from "./told";

const excel = emulateExcel();
const examples = excel.built.reference.flatMap(({ id, examples }) =>
  examples.filter(({ answer }) => !answer.startsWith("#")).map(({ formula }) => ({ id, formula })),
);

/** The calls that an example makes, those of functions inside others first. */
const callsOf = (formula: string): readonly Call[] =>
  callsDuring(excel, () => runExample(excel, formula));

test("the working of every function is told, and of nothing else", () => {
  const ids = excel.built.reference.map(({ id }) => id);
  expect([...toldFunctions()].sort()).toEqual([...ids].sort());
});

describe("the last step equals the answer", () => {
  test.each(examples)("of $formula", ({ id, formula }) => {
    const calls = callsOf(formula);
    expect(calls.at(-1)?.id).toBe(id);
    for (const call of calls) expectAgreement(call);
  });
});

test.each(examples)("the words and equations of $formula are whole", ({ formula }) => {
  for (const call of callsOf(formula)) expectSoundWords(call);
});
