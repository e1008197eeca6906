import { bars, type Part, type Picture, stack } from "../picture";

/** More bars than that no pane has room for. */
const MOST_BARS = 36;

/** What happened period by period: as bars, or, where there are too many of them, as a curve. */
export function overPeriods(title: string, unit: string, periods: readonly Part[]): Picture {
  if (periods.length === 1) return stack(title, unit, periods);
  if (periods.length <= MOST_BARS) return bars(title, unit, periods);
  const all = periods.reduce((sum, { value }) => sum + value, 0);
  return {
    kind: "curves",
    title,
    alt: `${title}: ${periods.length} periods, together ${Math.round(all)} ${unit}.`,
    x: { label: "period", unit: "" },
    y: { label: "cost", unit },
    curves: [{ label: "cost", points: periods.map(({ value }, i) => [i + 1, value] as const) }],
  };
}
