import type { EmulatedExcel } from "./emulated-excel";
import { exampleArguments } from "./example";
import { HostError } from "./host-error";

type Host = Pick<EmulatedExcel, "built" | "call">;

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
export function examplesOf(excel: Host, id: string): unknown[][] {
  const reference = excel.built.reference.find((one) => one.id === id);
  return (reference?.examples ?? []).map(({ formula }) => exampleArguments(excel, formula));
}

/** Calls of a function with junk, the same ones in every run; the host allows none of it but may hand it over. */
export function* junkCalls(excel: Host, id: string, count: number): Generator<unknown[]> {
  const metadata = excel.built.metadata.functions.find((one) => one.id === id);
  const parameters = metadata?.parameters ?? [];
  const examples = examplesOf(excel, id);
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
