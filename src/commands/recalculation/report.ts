import { isError, type Value } from "../../workbook/book";
import { lineOf, runsOf } from "./failed-runs";
import type { Recalculated } from "./recalculate";

/** How a command ends, for the script that started it. */
export const exitCodes = { fine: 0, failed: 1, refused: 2, kept: 3 } as const;

const count = (number: number, one: string, many = `${one}s`) =>
  `${number} ${number === 1 ? one : many}`;

function shown(value: Value): string {
  if (value === null) return "nothing";
  if (isError(value)) return value.error;
  return typeof value === "string" ? JSON.stringify(shorten(value)) : `${value}`;
}

const longestShown = 200;

/** A formula may have thousands of characters; its address says where to read them all. */
const shorten = (text: string) =>
  text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;

/**
 * Names and formulas come from the file: what a terminal would take for a command, or for the order in
 * which to show what follows, is not passed on.
 */
export const printable = (line: string): string =>
  line.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, " ");

/** What a person reads who ran a recalculation: what failed and why, what was kept, what went stale. */
export function reportOf(
  { ours, failures, kept, cramped }: Recalculated,
  changedCells: number,
  stale: readonly string[],
): string[] {
  const lines = [
    ours === 0
      ? "The workbook holds no Dosewright formula."
      : `${count(ours, "Dosewright formula")} computed, ${count(changedCells, "cell")} changed.`,
  ];
  if (failures.length > 0) lines.push(`${count(failures.length, "cell")} failed:`);
  for (const run of runsOf(failures)) lines.push(`  ${lineOf(run)}`);
  if (kept.length > 0)
    lines.push(
      `${count(kept.length, "native formula")} kept the value of the file, since it comes out otherwise here:`,
    );
  for (const { sheet, address, formula, saved, computed } of kept)
    lines.push(
      `  ${sheet}!${address}  =${shorten(formula)}  saved ${shown(saved)}, here ${shown(computed)}`,
    );
  for (const { sheet, address } of cramped)
    lines.push(
      `${sheet}!${address} gives many values but shows the first: enter its formula again in the spreadsheet, and it spills; a program writes it as an array formula over all its cells.`,
    );
  return [...lines, ...stale].map(printable);
}

export function exitCodeOf({ failures, kept }: Recalculated): number {
  if (failures.length > 0) return exitCodes.failed;
  return kept.length > 0 ? exitCodes.kept : exitCodes.fine;
}
