import { binX, plot, rectY, ruleX, ruleY, text } from "@observablehq/plot";
import type { Distribution } from "../../working/picture";
import { ACCENT, axisLabel, INK, look } from "./look";

export function drawDistribution({ values, lines, x }: Distribution, width: number): Element {
  return plot({
    ...look(width),
    height: 220,
    marginTop: 18 + 14 * lines.length,
    marginBottom: 40,
    x: { label: axisLabel(x), labelAnchor: "center", labelArrow: "none" },
    y: { label: null, ticks: 4 },
    marks: [
      rectY(values, {
        ...binX({ y: "count" }, { x: (value: number) => value, thresholds: 30 }),
        fill: ACCENT,
        fillOpacity: 0.55,
      }),
      ruleY([0], { stroke: INK }),
      ruleX(lines, { x: "value", stroke: INK, strokeDasharray: "4 3" }),
      text(lines, {
        x: "value",
        text: "label",
        frameAnchor: "top",
        dy: (_: unknown, i: number) => -8 - 14 * i,
        fill: INK,
      } as never),
    ],
  });
}
