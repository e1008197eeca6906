import { dot, line, plot, text } from "@observablehq/plot";
import type { Runs } from "../../working/picture";
import { short } from "../../working/picture";
import { ACCENT, axisLabel, INK, look, RULE } from "./look";

const BLOCK = 74;
const MOST_TICKS = 8;

/** Runs are counted: no tick stands between two of them. */
function wholeTicks(runs: readonly number[]): readonly number[] {
  const [first, last] = [Math.min(...runs), Math.max(...runs)];
  const step = Math.ceil((last - first + 1) / MOST_TICKS);
  return Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => first + i * step);
}

/** Each block by itself: what is run, in the order in which it is run. */
export function drawRuns({ runs, x, y }: Runs, width: number): Element {
  const blocks = [...new Set(runs.map(({ block }) => block))];
  return plot({
    ...look(width),
    height: BLOCK * blocks.length + 60,
    marginLeft: 48,
    marginRight: 56,
    marginBottom: 40,
    x: {
      label: axisLabel(x),
      labelAnchor: "center",
      labelArrow: "none",
      tickFormat: "d",
      inset: 10,
      ticks: wholeTicks(runs.map(({ run }) => run)),
    },
    y: { label: axisLabel(y), labelArrow: "none", ticks: 3, inset: 12, grid: false },
    fy: { label: null, domain: blocks, axis: blocks.length > 1 ? "right" : null },
    marks: [
      line(runs, { fy: "block", x: "run", y: "value", stroke: RULE }),
      dot(runs, { fy: "block", x: "run", y: "value", fill: ACCENT, r: 4 }),
      text(runs, {
        fy: "block",
        x: "run",
        y: "value",
        text: ({ value }) => short(value),
        dy: -10,
        fill: INK,
      }),
    ],
  });
}
