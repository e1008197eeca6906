import { addressOf, parseAddress } from "../../workbook/address";
import type { Failure } from "./failures";

/** Cells below one another that fail for one cause: a month in percent is one line, not thirty. */
export interface FailedRun {
  readonly first: Failure;
  readonly cells: number;
}

/** A message without its numbers: what two cells have in common that fail for one cause. */
const causeOf = ({ sheet, error, message }: Failure) =>
  [sheet, error, message.replace(/\d[\d.e+-]*/g, "#")].join("\n");

/** The failures in their order, each run where its first cell stands. */
export function runsOf(failures: readonly Failure[]): FailedRun[] {
  const runs: { first: Failure; cells: number }[] = [];
  const openAt = new Map<string, (typeof runs)[number]>();
  for (const failure of failures) {
    const { row, column } = parseAddress(failure.address);
    const placeOf = (at: number) => `${causeOf(failure)}\n${column},${at}`;
    const run = openAt.get(placeOf(row)) ?? { first: failure, cells: 0 };
    if (run.cells === 0) runs.push(run);
    run.cells += 1;
    openAt.set(placeOf(row + 1), run);
  }
  return runs;
}

export function lineOf({ first, cells }: FailedRun): string {
  const { sheet, address, error, message } = first;
  if (cells === 1) return `${sheet}!${address}  ${error}  ${message}`;
  const { row, column } = parseAddress(address);
  const last = addressOf(row + cells - 1, column);
  return `${sheet}!${address}:${last}  ${error}  ${cells} cells, the first: ${message}`;
}
