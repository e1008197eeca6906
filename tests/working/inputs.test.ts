import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { emulateExcel } from "../host/emulated-excel";
import { inputs } from "./inputs";
import { callsDuring, expectAgreement, expectSoundWords } from "./told";

const excel = emulateExcel();
const RUNS = 30;
/** Some inputs have no answer; of each function at least so many have one. */
const ANSWERED = RUNS / 6;

test("every function has inputs here", () => {
  const all = excel.built.metadata.functions.map(({ id }) => id).sort();
  expect(Object.keys(inputs).sort()).toEqual(all);
});

describe("wherever a function answers, its working is told and ends in the answer", () => {
  test.each(Object.entries(inputs))("%s", (id, given) => {
    let answered = 0;
    fc.assert(
      fc.property(given, (cells) => {
        const [call] = callsDuring(excel, () => excel.call(id, ...cells)) as [Call];
        if (!Array.isArray(call.answer)) return;
        answered++;
        expectAgreement(call);
        expectSoundWords(call);
      }),
      { numRuns: RUNS },
    );
    expect(answered).toBeGreaterThanOrEqual(ANSWERED);
  });
});
