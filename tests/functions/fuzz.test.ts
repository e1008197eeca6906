import { afterAll, describe, expect, test } from "vitest";
import { emulateExcel, type HostCell, HostError } from "../host/emulated-excel";
import { exampleArguments } from "../host/example";

/** A hundred thousand calls in all, the same ones in every run; functions that search get fewer. */
const CALLS = 100_000;
const CALLS_OF_A_SEARCH = 300;
const SEARCHES = new Set(["PARTITION.TIMED", "TRIAL.REPLICATES", "TRIAL.COMPARE"]);
const LONGEST_CALL_MS = 50;
/** Cells; a ladder of 46,000 steps may take its time. */
const SMALL_ANSWER = 10_000;

const excel = emulateExcel();
const { functions } = excel.built.metadata;
const others = functions.length - SEARCHES.size;
const each = Math.ceil((CALLS - SEARCHES.size * CALLS_OF_A_SEARCH) / others);

/** A stream of whole numbers below a bound: Marsaglia, Xorshift RNGs, J. Stat. Softw. 8 (2003) 14. */
function stream(seed: number): (bound: number) => number {
  let state = seed | 1;
  return (bound) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % bound;
  };
}

const error = (code: string) => new HostError(code);

/** What a cell may come to hold, and what no sheet should hand over but might. */
const JUNK: readonly unknown[] = [
  null,
  undefined,
  "",
  " ",
  0,
  -0,
  1,
  -1,
  2,
  0.5,
  0.03,
  7,
  42,
  1e-9,
  1e9,
  1e-308,
  5e-324,
  1e308,
  -1e308,
  Number.MAX_VALUE,
  Number.MAX_SAFE_INTEGER,
  2 ** 53,
  46_000,
  0.1 + 0.2,
  NaN,
  Infinity,
  -Infinity,
  true,
  false,
  "abc",
  "1.5",
  "1,5",
  "TRUE",
  "=A1",
  "+1",
  "-",
  "%",
  "5 %",
  "__proto__",
  "constructor",
  "toString",
  "hasOwnProperty",
  "\u0000",
  "🧪",
  "x".repeat(10_000),
  "C6H10O5",
  "C".repeat(500),
  "((((",
  "exponential",
  "even",
  "kg/t",
  "cationic starch",
  "'quoted",
  "<b>",
  "{1}",
  error("#DIV/0!"),
  error("#N/A"),
  error("#NAME?"),
  error("#VALUE!"),
  error("#BUSY!"),
  error("#SPILL!"),
  { type: "Error", basicValue: "#REF!" },
  { basicType: "Error" },
  { code: "#NUM!" },
  { basicValue: 3 },
  { basicValue: "text" },
  { basicValue: null },
  { basicValue: { basicValue: 1 } },
  {},
  { length: 3 },
  new Date(0),
  Object.create(null),
];

/** Ranges of odd shapes. */
const SHAPES: readonly ((cell: () => unknown) => unknown[][])[] = [
  (cell) => [[cell()]],
  (cell) => [[cell(), cell()]],
  (cell) => [[cell()], [cell()]],
  (cell) => [[cell(), cell(), cell()]],
  (cell) => [[cell()], [cell()], [cell()], [cell()]],
  (cell) => [
    [cell(), cell()],
    [cell(), cell()],
  ],
  (cell) => Array.from({ length: 6 }, () => [cell(), cell(), cell()]),
  (cell) => [[cell(), cell()], [cell()]],
  () => [[]],
  () => [],
  () => [[], []],
  (cell) => [[cell()], [null], [""], [cell()], [null]],
];

/** The arguments of the documented examples: changed in a place or two they reach deep into a function. */
function examplesOf(id: string): unknown[][] {
  const reference = excel.built.reference.find((one) => one.id === id);
  return (reference?.examples ?? []).map(({ formula }) => exampleArguments(excel, formula));
}

function* callsOf(id: string, count: number): Generator<unknown[]> {
  const metadata = functions.find((one) => one.id === id);
  const parameters = metadata?.parameters ?? [];
  const examples = examplesOf(id);
  const next = stream(Array.from(id).reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7));
  const junk = () => JUNK[next(JUNK.length)];
  const place = (matrix: boolean) =>
    matrix && next(4) > 0 ? (SHAPES[next(SHAPES.length)] as (typeof SHAPES)[number])(junk) : junk();
  for (let call = 0; call < count; call += 1) {
    const given = parameters.map(({ dimensionality }) => place(dimensionality === "matrix"));
    const example = examples[next(examples.length + 1)];
    if (example === undefined) {
      yield given;
      continue;
    }
    const changed = parameters.map((_, i) => example[i]);
    for (let changes = next(3); changes > 0; changes -= 1) {
      const at = next(Math.max(1, parameters.length));
      changed[at] = next(2) === 0 ? given[at] : changedCell(changed[at], next, junk);
    }
    yield changed;
  }
}

/** The same range with one cell of it turned into junk. */
function changedCell(
  value: unknown,
  next: (bound: number) => number,
  junk: () => unknown,
): unknown {
  if (!Array.isArray(value)) return junk();
  const rows = (value as unknown[][]).map((line) => [...line]);
  const line = rows[next(rows.length)];
  if (line !== undefined) line[next(line.length)] = junk();
  return rows;
}

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
const figures = { calls: 0, cells: 0, errors: 0, slowest: { id: "", ms: 0 } };

function tryCall(id: string, given: unknown[], seen: Set<"values" | "errors">): string | undefined {
  try {
    const start = performance.now();
    const answer = excel.callWith(id, given);
    const took = performance.now() - start;
    const errors = answer.flat().filter((cell) => cell instanceof HostError).length;
    seen.add(errors > 0 ? "errors" : "values");
    figures.calls += 1;
    figures.cells += answer.flat().length;
    figures.errors += errors;
    const small = answer.length * (answer[0]?.length ?? 0) <= SMALL_ANSWER;
    if (small && took > figures.slowest.ms) {
      // A busy machine or the garbage of earlier calls may spoil one look: what is slow is slow again.
      const again = [1, 2, 3].map(() => processorTime(() => excel.callWith(id, given)));
      const ms = Math.min(took, ...again);
      if (ms > figures.slowest.ms) figures.slowest = { id, ms };
      if (ms > LONGEST_CALL_MS) return `${ms.toFixed(0)} ms`;
    }
    return faultOf(answer) ?? unexplained(answer, given);
  } catch (problem) {
    return `thrown: ${(problem as Error).stack?.split("\n").slice(0, 3).join(" | ")}`;
  }
}

/** Milliseconds that the processor worked for us. */
function processorTime(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  return process.cpuUsage(before).user / 1000;
}

const shown = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => {
    if (typeof part === "number" && !Number.isFinite(part)) return String(part);
    if (part === undefined) return "(nothing)";
    if (typeof part === "string" && part.length > 40) return `${part.slice(0, 20)}…`;
    return part;
  });

describe("junk of every type in every place", { timeout: 60_000 }, () => {
  test.each(functions.map(({ id }) => id))(
    "%s gives values and explained errors, quickly",
    (id) => {
      const faults = new Map<string, string>();
      const seen = new Set<"values" | "errors">();
      for (const given of callsOf(id, SEARCHES.has(id) ? CALLS_OF_A_SEARCH : each)) {
        const fault = tryCall(id, given, seen);
        if (fault !== undefined && !faults.has(fault))
          faults.set(fault, `${fault} for ${id}(${given.map(shown).join("; ")})`);
      }
      expect([...faults.values()]).toEqual([]);
      // Junk alone would never get past the first check: the changed examples must.
      expect(seen).toContain("values");
      if (id !== "LIBRARY.VERSION") expect(seen).toContain("errors");
    },
  );
});

afterAll(() => {
  const { calls, cells, errors, slowest } = figures;
  const whole = (count: number) => count.toLocaleString("en");
  console.log(
    `Junk in every place: ${whole(calls)} calls of ${functions.length} functions gave ${whole(cells)} cells, ${whole(errors)} of them errors, each with its message or from its input. The slowest call with a small answer took ${slowest.ms.toFixed(1)} ms (${slowest.id}).`,
  );
});
