import { binX, plot, rectY, ruleX, ruleY, text } from "@observablehq/plot";
import type { Distribution } from "../../working/picture";
import { ACCENT, axisLabel, INK, look } from "./look";

/** The names of the lines stand above one another. */
const LINE = 14;

/** As many bins as show a shape and not each value by itself: about twice the root of their number. */
const bins = (count: number) => Math.min(30, Math.max(4, Math.round(2 * Math.sqrt(count))));

export function drawDistribution({ values, lines, x }: Distribution, width: number): Element {
  return plot({
    ...look(width),
    height: 220,
    marginTop: 18 + LINE * lines.length,
    marginLeft: 24,
    marginRight: 24,
    marginBottom: 40,
    x: { label: axisLabel(x), labelAnchor: "center", labelArrow: "none" },
    // How many lie in a bin depends on the bins; the shape is what is to be seen.
    y: { axis: null },
    marks: [
      rectY(values, {
        ...binX({ y: "count" }, { x: (value: number) => value, thresholds: bins(values.length) }),
        fill: ACCENT,
        fillOpacity: 0.55,
      }),
      ruleY([0], { stroke: INK }),
      ruleX(lines, { x: "value", stroke: INK, strokeDasharray: "4 3" }),
      lines.map((line, i) =>
        text([line], {
          x: "value",
          text: "label",
          frameAnchor: "top",
          dy: -8 - LINE * i,
          fill: INK,
        }),
      ),
    ],
  });
}
