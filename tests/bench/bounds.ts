import { endlessNames } from "../../src/workbook/formula/endless-names";
import { wordsOf } from "../../src/workbook/formula/tokens";
import { SpillAreas } from "../../src/workbook/read/spill-areas";
import { examplesOf, junkCalls } from "../host/junk";
import { isColumn, SHEET_ROWS, toTheEnd, upright } from "../host/ranges";
import { built, find } from "./bundle";
import { type Measured, medianTime, ratio } from "./measure";

const ids = built.metadata.functions.map(({ id }) => id);
const host = { built, call: (id: string, ...given: unknown[]) => find(id)(...given) as never };
const argumentsOf = (id: string, given: readonly unknown[]) => {
  const parameters = built.metadata.functions.find((one) => one.id === id)?.parameters ?? [];
  return parameters.map((_, i) => given[i] ?? null);
};

/** What no input may cost, however it came about: by mistake, or in a file that is meant to stall. */
export function bounds(): Measured[] {
  return [names(), spills(), junk(), blanks()];
}

function names(): Measured {
  const chain = Array.from({ length: 20_000 }, (_, at) => ({
    name: `n_${at}`,
    formula: `n_${at + 1}`,
  }));
  return {
    work: "20,000 names that read one another in a chain",
    measured: ratio(
      () => endlessNames(chain),
      () => chain.map(({ formula }) => wordsOf(formula)),
      7,
    ),
    limit: 30,
    unit: "× reading their words",
    note: "what is asked of a file before it is opened",
  };
}

function spills(): Measured {
  const rows = 20_000;
  const short = Array.from({ length: rows }, (_, row) => ({
    row,
    column: 9000,
    rows: 1,
    columns: 2,
  }));
  const among = (columns: number) => {
    const long = Array.from({ length: columns }, (_, column) => ({
      row: 0,
      column,
      rows: 1_000_000,
      columns: 1,
    }));
    return () => {
      const areas = new SpillAreas([...long, ...short]);
      let found = 0;
      for (let row = 0; row < rows; row += 1) {
        areas.enter(row);
        if (areas.at(9001) === short[row]) found += 1;
      }
      if (found !== rows) throw new Error(`${found} of ${rows} answers found`);
    };
  };
  return {
    work: "20,000 spilled answers beside 8,000 columns of others",
    measured: ratio(among(8000), among(8), 7),
    limit: 5,
    unit: "× beside 8",
    note: "reading a file",
  };
}

/** Cells; a ladder of 46,000 steps may take its time. */
const SMALL = 10_000;

/** The dearest of many calls with junk, against the dearest of the documented examples. */
function junk(): Measured {
  const example = dearest(
    ids.flatMap((id) =>
      examplesOf(host, id).map((given) => ({ id, given: argumentsOf(id, given) })),
    ),
  );
  const call = dearest(
    ids.flatMap((id) => [...junkCalls(host, id, 200)].map((given) => ({ id, given }))),
  );
  return {
    work: "a call with junk in any place, the dearest of many",
    measured: call.time / example.time,
    limit: 40,
    unit: "× the dearest example",
    note: `${call.id} against ${example.id}`,
  };
}

interface Call {
  readonly id: string;
  readonly given: readonly unknown[];
}

/** Of those that took longest once, for anything may have come between, the one that takes longest again. */
function dearest(calls: readonly Call[]): Call & { readonly time: number } {
  const timed = calls.map((call) => {
    const start = performance.now();
    const answer = run(call);
    const small = !Array.isArray(answer) || answer.flat().length <= SMALL;
    return { ...call, time: small ? performance.now() - start : 0 };
  });
  const slow = timed.toSorted((a, b) => b.time - a.time).slice(0, 20);
  return slow
    .map((call) => ({ ...call, time: medianTime(() => run(call), 3) }))
    .reduce((a, b) => (a.time > b.time ? a : b));
}

/** A call that fails costs what it costs, too. */
function run({ id, given }: Call): unknown {
  try {
    return find(id)(...given);
  } catch (problem) {
    return problem;
  }
}

/** Whole columns, blank below their first rows, against a look at each of their cells by hand. */
function blanks(): Measured {
  const rounds = ids.flatMap((id) => {
    const [given = []] = examplesOf(host, id);
    const short = argumentsOf(id, given).map(upright);
    const long = short.map((value) =>
      isColumn(value) && value.length > 1 ? toTheEnd(value, "") : value,
    );
    const columns = long.filter(isColumn).filter(({ length }) => length === SHEET_ROWS);
    if (columns.length === 0) return [];
    const byHand = () => columns.map((rows) => rows.findLastIndex(([cell]) => cell !== ""));
    const least = () => [run({ id, given: short }), byHand()];
    return [{ id, times: medianTime(() => run({ id, given: long }), 3) / medianTime(least, 3) }];
  });
  const most = rounds.reduce((a, b) => (a.times > b.times ? a : b));
  return {
    work: `whole columns with a million blanks, ${rounds.length} functions`,
    measured: most.times,
    limit: 40,
    unit: "× the filled rows, and looking for the last by hand",
    note: `${most.id}, the dearest`,
  };
}
