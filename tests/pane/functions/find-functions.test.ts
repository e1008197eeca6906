import { expect, inject, test } from "vitest";
import { findFunctions } from "../../../src/pane/functions/find-functions";

const { reference } = inject("functions");
const first = (query: string) => findFunctions(query, reference)[0]?.id;

test.each([
  ["pump", "DOSE.PUMP"],
  ["WETEND.DOSE.PUMP", "DOSE.PUMP"],
  ["litres per hour", "DOSE.PUMP"],
  ["air dry", "DOSE.CONVERT"],
  ["closed loop recirculation", "RETENTION.LOOP"],
  ["permit consent", "EFFLUENT.ALLOWANCE"],
  ["saturation isotherm", "PARTITION.EQUILIBRIUM"],
])("%s finds %s first", (query, id) => {
  expect(first(query)).toBe(id);
});

test("who asks how sure a number is finds the intervals first", () => {
  const found = findFunctions("how sure", reference).map(({ id }) => id);
  expect(new Set(found.slice(0, 3))).toEqual(
    new Set(["STRENGTH.BAND", "TRIAL.COMPARE", "UNCERTAINTY.SUMMARY"]),
  );
});

test("a unit finds the functions that use it", () => {
  const found = findFunctions("L/h", reference).map(({ id }) => id);
  expect(found).toContain("DOSE.PUMP");
  expect(found).not.toContain("RETENTION.LOOP");
});

test("a word that no text holds finds nothing", () => {
  expect(findFunctions("zeppelin", reference)).toEqual([]);
});

test("every function is found first by its own name", () => {
  expect(reference.filter(({ id, name }) => first(name) !== id)).toEqual([]);
});
