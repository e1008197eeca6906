import type { ChartKind } from "../../workbook/plan";
import type { PicturedColumn } from "./picture";

/** The room between two places, in widths of a column, as spreadsheets leave it. */
const GAP = 1.5;

/** The columns of each series, beside or upon one another; `values` holds NaN where there is none. */
export function columnsOf(kind: ChartKind, values: readonly (readonly number[])[]) {
  if (kind === "full columns") return stacked(shares(values));
  return kind.startsWith("stacked") ? stacked(values) : beside(values);
}

function beside(values: readonly (readonly number[])[]): PicturedColumn[][] {
  const width = 1 / (values.length + GAP);
  return values.map((series, place) =>
    standing(series, (value, at) => {
      const left = at + (place - values.length / 2) * width;
      return { left, right: left + width, low: Math.min(0, value), high: Math.max(0, value) };
    }),
  );
}

/** What is above 0 goes up from it, what is below goes down. */
function stacked(values: readonly (readonly number[])[]): PicturedColumn[][] {
  const half = 1 / (1 + GAP) / 2;
  const up: number[] = [];
  const down: number[] = [];
  return values.map((series) =>
    standing(series, (value, at) => {
      const heap = value < 0 ? down : up;
      const start = heap[at] ?? 0;
      const end = start + value;
      heap[at] = end;
      return {
        left: at - half,
        right: at + half,
        low: Math.min(start, end),
        high: Math.max(start, end),
      };
    }),
  );
}

const standing = (
  series: readonly number[],
  column: (value: number, at: number) => PicturedColumn,
): PicturedColumn[] =>
  series.flatMap((value, at) => (Number.isNaN(value) ? [] : [column(value, at)]));

/** Each value as its part of all at its place. */
function shares(values: readonly (readonly number[])[]): number[][] {
  const wholes: number[] = [];
  for (const series of values)
    series.forEach((value, at) => {
      wholes[at] = (wholes[at] ?? 0) + (Number.isNaN(value) ? 0 : Math.abs(value));
    });
  return values.map((series) => series.map((value, at) => value / (wholes[at] || 1)));
}
