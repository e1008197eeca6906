import { describe, expect, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { tellWorking, toldFunctions } from "../../src/working";
import { numbersOf, type Step, type Working } from "../../src/working/step";
import { emulateExcel } from "../host/emulated-excel";
import { runExample } from "../host/example";

const excel = emulateExcel();
const { reference } = excel.built;
const examples = reference.flatMap(({ id, examples }) =>
  examples.filter(() => toldFunctions().includes(id)).map(({ formula }) => ({ id, formula })),
);

/** The calls that an example makes, those of functions inside others first. */
function callsOf(formula: string): readonly Call[] {
  const calls: Call[] = [];
  excel.dosewright.observe((call) => calls.push(call as Call));
  runExample(excel, formula);
  excel.dosewright.observe(undefined);
  return calls.filter(({ id }) => toldFunctions().includes(id));
}

function tell(call: Call): Working {
  const working = tellWorking(call.id, call.values(0, 0));
  if (working === undefined) throw new Error(`The working of ${call.id} is not told.`);
  return working;
}

describe("the last step equals the answer", () => {
  test.each(examples)("of $formula", ({ id, formula }) => {
    const calls = callsOf(formula);
    expect(calls.at(-1)?.id).toBe(id);
    for (const call of calls) {
      const answer = (call.answer as unknown[][]).flat().filter((cell) => typeof cell === "number");
      const told = numbersOf(tell(call).steps.at(-1) as Step);
      expect(told).toHaveLength(answer.length);
      told.forEach((value, i) => {
        const expected = answer[i] as number;
        expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
      });
    }
  });
});

test.each(examples)("a picture of $formula says in words what it shows", ({ formula }) => {
  for (const call of callsOf(formula)) {
    const words = tell(call).picture?.alt;
    if (words === undefined) continue;
    expect(words).toMatch(/^[A-Z].*\d.*\.$/s);
    expect(words).not.toMatch(/NaN|undefined|Infinity/);
  }
});
