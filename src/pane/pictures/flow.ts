import { arrow, plot, text } from "@observablehq/plot";
import { type Flow, short } from "../../working/picture";
import { ACCENT, INK, look, PAPER } from "./look";

/** Where each place of the loop lies: across as the stock runs, down as the water falls. */
const PLACES: Readonly<Record<string, readonly [x: number, y: number]>> = {
  dose: [0, 1.25],
  headbox: [1, 1.25],
  sheet: [2, 2],
  sewer: [2, 1.25],
  degraded: [2, 0.5],
  "white water": [1, 0.1],
};

const THICKEST = 26;
/** Room for the names at both ends of a stream. */
const way = { x1: "x1", y1: "y1", x2: "x2", y2: "y2", inset: 30 } as const;

/** The loop as streams, each as thick as what it carries. */
export function drawFlow({ streams }: Flow, width: number): Element {
  const most = Math.max(...streams.map(({ value }) => value));
  const at = (name: string) => PLACES[name] as readonly [number, number];
  const drawn = streams.map((stream) => {
    const [[x1, y1], [x2, y2]] = [at(stream.from), at(stream.to)];
    return { ...stream, x1, y1, x2, y2, x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
  });
  const names = [...new Set(streams.flatMap(({ from, to }) => [from, to]))].map((name) => ({
    name,
    x: at(name)[0],
    y: at(name)[1],
  }));
  return plot({
    ...look(width),
    height: 230,
    margin: 22,
    marginLeft: 32,
    marginRight: 40,
    x: { axis: null, domain: [0, 2] },
    y: { axis: null, domain: [0, 2] },
    marks: [
      arrow(drawn, {
        ...way,
        stroke: ACCENT,
        strokeOpacity: 0.35,
        strokeWidth: ({ value }) => (THICKEST * value) / most,
        headLength: 0,
        strokeLinecap: "butt",
      }),
      arrow(drawn, { ...way, stroke: ACCENT, strokeWidth: 1.5, headLength: 8 }),
      text(drawn, {
        x: "x",
        y: "y",
        text: ({ value }) => short(value),
        fill: INK,
        stroke: PAPER,
        strokeWidth: 4,
        fontWeight: 600,
      }),
      text(names, { x: "x", y: "y", text: "name", fill: INK }),
    ],
  });
}
