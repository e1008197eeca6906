import { afterAll, describe, expect, test } from "vitest";
import { emulateExcel, type HostCell, HostError } from "../host/emulated-excel";
import { junkCalls } from "../host/junk";

/** A hundred thousand calls in all, the same ones in every run; functions that search get fewer. */
const CALLS = 100_000;
const CALLS_OF_A_SEARCH = 300;
const SEARCHES = new Set(["PARTITION.TIMED", "TRIAL.REPLICATES", "TRIAL.COMPARE"]);

const excel = emulateExcel();
const { functions } = excel.built.metadata;
const others = functions.length - SEARCHES.size;
const each = Math.ceil((CALLS - SEARCHES.size * CALLS_OF_A_SEARCH) / others);

const CODES = new Set([
  "#VALUE!",
  "#N/A",
  "#DIV/0!",
  "#NAME?",
  "#REF!",
  "#NUM!",
  "#BUSY!",
  "#SPILL!",
]);

function faultOf(answer: HostCell[][]): string | undefined {
  const columns = answer[0]?.length ?? 0;
  if (answer.length === 0 || columns === 0) return "an answer without a cell";
  for (const line of answer) {
    if (line.length !== columns) return "rows of unequal length";
    for (const cell of line) {
      if (typeof cell === "number" && !Number.isFinite(cell)) return `the number ${cell}`;
      if (cell === null || cell === undefined) return `a cell that is ${cell}`;
      if (typeof cell !== "object") continue;
      if (!(cell instanceof HostError))
        return `an object that is no error: ${JSON.stringify(cell)}`;
      if (!CODES.has(cell.code)) return `an error of the code ${cell.code}`;
    }
  }
  return undefined;
}

/** An error of our own says why; one that stood in the input comes back as it was. */
function unexplained(answer: HostCell[][], given: readonly unknown[]): string | undefined {
  const came = new Set(given.flat(2).map(codeOf));
  const silent = answer
    .flat()
    .find((cell) => cell instanceof HostError && !cell.message && !came.has(cell.code));
  return silent === undefined
    ? undefined
    : `an error without a message: ${(silent as HostError).code}`;
}

function codeOf(cell: unknown): string | undefined {
  if (typeof cell !== "object" || cell === null) return undefined;
  const { code, basicValue, basicType } = cell as Record<string, unknown>;
  if (typeof code === "string") return code;
  return typeof basicValue === "string"
    ? basicValue
    : basicType === "Error"
      ? "#VALUE!"
      : undefined;
}

/** What was seen, printed at the end. */
const figures = { calls: 0, cells: 0, errors: 0 };

function tryCall(id: string, given: unknown[], seen: Set<"values" | "errors">): string | undefined {
  try {
    const answer = excel.callWith(id, given);
    const errors = answer.flat().filter((cell) => cell instanceof HostError).length;
    seen.add(errors > 0 ? "errors" : "values");
    figures.calls += 1;
    figures.cells += answer.flat().length;
    figures.errors += errors;
    return faultOf(answer) ?? unexplained(answer, given);
  } catch (problem) {
    return `thrown: ${(problem as Error).stack?.split("\n").slice(0, 3).join(" | ")}`;
  }
}

const shown = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => {
    if (typeof part === "number" && !Number.isFinite(part)) return String(part);
    if (part === undefined) return "(nothing)";
    if (typeof part === "string" && part.length > 40) return `${part.slice(0, 20)}…`;
    return part;
  });

describe("junk of every type in every place", { timeout: 60_000 }, () => {
  test.each(functions.map(({ id }) => id))("%s gives values and explained errors", (id) => {
    const faults = new Map<string, string>();
    const seen = new Set<"values" | "errors">();
    for (const given of junkCalls(excel, id, SEARCHES.has(id) ? CALLS_OF_A_SEARCH : each)) {
      const fault = tryCall(id, given, seen);
      if (fault !== undefined && !faults.has(fault))
        faults.set(fault, `${fault} for ${id}(${given.map(shown).join("; ")})`);
    }
    expect([...faults.values()]).toEqual([]);
    // Junk alone would never get past the first check: the changed examples must.
    expect(seen).toContain("values");
    if (id !== "LIBRARY.VERSION") expect(seen).toContain("errors");
  });
});

afterAll(() => {
  const { calls, cells, errors } = figures;
  const whole = (count: number) => count.toLocaleString("en");
  console.log(
    `Junk in every place: ${whole(calls)} calls of ${functions.length} functions gave ${whole(cells)} cells, ${whole(errors)} of them errors, each with its message or from its input.`,
  );
});
