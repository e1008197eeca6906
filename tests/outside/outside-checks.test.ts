import { afterAll, describe, expect, test } from "vitest";
import { emulateExcel } from "../host/emulated-excel";
import { runExample } from "../host/example";
import { outsideChecks } from "./checks";

const excel = emulateExcel();
const reached: Record<string, string>[] = [];

describe("values from outside the project", () => {
  const named = outsideChecks.map((check) => {
    const id = /WETEND\.([A-Z.]+)/.exec(check.formula)?.[1] as string;
    return { ...check, id };
  });

  test.each(named)("$id gives $expected ($source)", (check) => {
    const { id, formula, expected, cell = [0, 0], tolerance, source } = check;
    const actual = runExample(excel, formula)[cell[0]]?.[cell[1]] as number;
    const error = Math.abs(actual / expected - 1);
    reached.push({
      family: id.split(".")[0] as string,
      function: id,
      source,
      reached: error.toExponential(1),
      allowed: tolerance.toExponential(1),
    });
    expect(error).toBeLessThanOrEqual(tolerance);
  });

  test("stand beside every family", () => {
    const families = new Set(excel.built.reference.map(({ family }) => family));
    expect(new Set(named.map(({ id }) => id.split(".")[0]))).toEqual(families);
  });

  afterAll(() => console.table(reached));
});
