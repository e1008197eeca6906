import { expect } from "vitest";
import type { Call } from "../../src/cells/observer";
import { tellWorking } from "../../src/working";
import type { Step, Working } from "../../src/working/step";
import { type EmulatedExcel, HostError } from "../host/emulated-excel";

/** The calls that are made meanwhile, those of functions inside others first. */
export function callsDuring(excel: EmulatedExcel, run: () => void): readonly Call[] {
  const calls: Call[] = [];
  excel.dosewright.observe((call) => calls.push(call as Call));
  run();
  excel.dosewright.observe(undefined);
  return calls;
}

export function tell(call: Call, row = 0, column = 0): Working {
  const working = tellWorking(call.id, call.values(row, column));
  if (working === undefined) throw new Error(`The working of ${call.id} is not told.`);
  return working;
}

/** Holds the last step against the answer: against the whole of it, its row, or its cell. */
export function expectAgreement(call: Call): void {
  const answer = call.answer as unknown[][];
  const whole = numbersIn(answer.flat());
  const last = lastStep(tell(call));
  const told = numbersOf(last);
  if (told.length === whole.length) {
    expectEqual(told, whole);
    expectTexts(last, answer);
    return;
  }
  answer.forEach((row, r) => {
    if (told.length === row.length) {
      expectEqual(numbersOf(lastStep(tell(call, r))), numbersIn(row));
      return;
    }
    row.forEach((cell, c) => {
      if (cell instanceof HostError) return;
      expectEqual(numbersOf(lastStep(tell(call, r, c))), numbersIn([cell]));
    });
  });
}

/** Whatever the numbers, equations and words hold no number that is none, and the words close. */
export function expectSoundWords(call: Call): void {
  const { says, steps, picture, remarks: kept = [] } = tell(call);
  const last = lastStep({ steps });
  if (last.kind === "table" || last.lines.length > 1)
    expect(says, `the answer of ${call.id} in a sentence`).toBeDefined();
  const remarks = says === undefined ? kept : [says, ...kept];
  const equations = steps.flatMap((step) =>
    step.kind === "lines" ? step.lines.map(({ tex }) => tex ?? "") : [],
  );
  const words = picture === undefined ? [] : [picture.alt];
  for (const text of [...equations, ...words, ...remarks]) {
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  }
  for (const text of words) expect(text).toMatch(/^[A-Z].*\d.*\.$/s);
  for (const text of remarks) expect(text).toMatch(/^[A-Z0-9].*\.$/s);
}

const lastStep = ({ steps }: Working) => steps.at(-1) as Step;

/** The numbers that a step found, in order. */
const numbersOf = (step: Step) =>
  numbersIn(step.kind === "table" ? step.rows.flat() : step.lines.map(({ value }) => value));

const numbersIn = (cells: readonly unknown[]) => cells.filter((cell) => typeof cell === "number");

function expectEqual(told: readonly number[], answer: readonly number[]): void {
  expect(told).toHaveLength(answer.length);
  told.forEach((value, i) => {
    const expected = answer[i] as number;
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
  });
}

/** What the answer says in words, labels with their units included, the step says too. */
function expectTexts(step: Step, answer: readonly (readonly unknown[])[]): void {
  const texts: readonly unknown[] =
    step.kind === "table"
      ? [...step.columns, ...step.rows.flat()]
      : step.lines.flatMap(({ label, unit, value }) => [label, `${label} [${unit}]`, value]);
  const wanted = answer.flat().filter((cell) => typeof cell === "string" && cell !== "");
  expect(texts).toEqual(expect.arrayContaining(wanted));
}
