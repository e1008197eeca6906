import { expect } from "vitest";
import { Refusal, type RefusalKind } from "../../src/model/refusal";

/** Expects the model to refuse, in the kind and with the words given. */
export function expectRefusal(kind: RefusalKind, words: RegExp | string, calculate: () => unknown) {
  let thrown: unknown;
  try {
    calculate();
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(Refusal);
  expect((thrown as Refusal).kind).toBe(kind);
  if (typeof words === "string") expect((thrown as Refusal).message).toContain(words);
  else expect((thrown as Refusal).message).toMatch(words);
}

/** Expects a value within a relative tolerance, so that tiny values are held as tightly as large ones. */
export function expectRelative(actual: number, expected: number, tolerance: number) {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(
    tolerance * Math.abs(expected),
  );
}
