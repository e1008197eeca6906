import { barX, plot, ruleX, ruleY, text } from "@observablehq/plot";
import { type Bars, short } from "../../working/picture";
import { ACCENT, INK, look, textWidth } from "./look";

const ROW = 26;

export function drawBars({ bars, unit }: Bars, width: number): Element {
  const labelRoom = Math.min(width * 0.45, Math.max(...bars.map(({ label }) => textWidth(label))));
  const ranged = bars.filter(({ low, high }) => low !== undefined && high !== undefined);
  const ends = bars.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value]);
  const [least, most] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const valueRoom = Math.max(...bars.map(({ value }) => textWidth(short(value)))) + 10;
  return plot({
    ...look(width),
    height: ROW * bars.length + 40,
    marginLeft: labelRoom + 10,
    marginRight: valueRoom,
    marginBottom: 32,
    x: {
      domain: least === most ? [0, 1] : [least, most],
      label: unit === "fraction" ? null : unit,
      labelAnchor: "center",
      labelArrow: "none",
      ticks: Math.max(2, Math.floor((width - labelRoom) / 70)),
    },
    y: { label: null, domain: bars.map(({ label }) => label), tickSize: 0 },
    marks: [
      barX(bars, { x: "value", y: "label", fill: ACCENT, insetTop: 4, insetBottom: 4 }),
      ruleY(ranged, { y: "label", x1: "low", x2: "high", stroke: INK, strokeWidth: 1.5 }),
      text(bars, {
        x: ({ value, high }) => Math.max(0, value, high ?? value),
        y: "label",
        text: ({ value }) => short(value),
        textAnchor: "start",
        dx: 5,
        fill: INK,
      }),
      ruleX([0], { stroke: INK }),
    ],
  });
}
