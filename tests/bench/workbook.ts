import { createEngine } from "../../src/engine/engine";
import { loadFunctions } from "../../src/engine/functions";
import { packages } from "../../src/engine/node";
import type { Book, Cell } from "../../src/workbook/book";
import { built } from "./bundle";
import { type Measured, median } from "./measure";

const ROWS = 5000;
const ROUNDS = 7;

/** A sheet of doses with a formula of ours in each row. */
const book: Book = {
  sheets: [{ name: "Log", cells: Object.fromEntries(Array.from({ length: ROWS }, line)) }],
  definedNames: [],
  tables: [],
  styles: {},
};

function line(_: unknown, row: number): [number, Record<number, Cell>] {
  const formula = `WETEND.DOSE.TARGET(A${row + 1},0.5)`;
  return [row, { 0: { value: 5 + row / ROWS }, 1: { value: null, formula } }];
}

/** A whole recalculation, against the same sheet with a function that returns its argument. */
export async function workbook(): Promise<Measured[]> {
  const loaded = loadFunctions(built);
  const ours = createEngine(packages, loaded);
  const returning = createEngine(packages, {
    ...loaded,
    functions: loaded.functions.map((one) => ({ ...one, call: (cells: unknown) => cells })),
  });
  const answer = await ours.recalculate(book);
  const last = answer.book.sheets[0]?.cells[ROWS - 1]?.[1]?.value;
  if (last !== 2 * (5 + (ROWS - 1) / ROWS)) throw new Error(`the last cell shows ${String(last)}`);

  const ratios: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const theirs = await time(() => returning.recalculate(book));
    ratios.push((await time(() => ours.recalculate(book))) / theirs);
  }
  return [
    {
      work: "a workbook of 5,000 cells of ours, headless",
      measured: median(ratios),
      limit: 1.3,
      unit: "× a function that returns its argument",
      note: "whole recalculation, DOSE.TARGET in each row",
    },
  ];
}

async function time(run: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}
