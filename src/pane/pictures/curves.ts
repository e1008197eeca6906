import { areaY, dot, line, type Markish, plot, ruleX, ruleY, text } from "@observablehq/plot";
import type { Curves } from "../../working/picture";
import { ACCENT, axisLabel, dashOf, FAINT, INK, look, PAPER, RULE, textWidth } from "./look";

export function drawCurves(picture: Curves, width: number): Element {
  const { curves, band = [], measured = [], here, level, x, y } = picture;
  const isNamed = curves.length > 1;
  const highest = Math.max(...curves.flatMap(({ points }) => points.map(([, y]) => y)));
  const ends = curves.flatMap(({ label, points }) => {
    const end = points.at(-1);
    return end === undefined ? [] : [{ label, x: end[0], y: end[1] }];
  });
  const room = isNamed ? Math.max(...curves.map(({ label }) => textWidth(label))) + 8 : 12;
  const floor = y.fromZero === false ? lowestOf(picture) : 0;
  const marks: Markish[] = y.fromZero === false ? [] : [ruleY([0], { stroke: RULE })];
  if (band.length > 0) {
    marks.push(
      areaY(band, { x: "0", y1: "1", y2: "2", fill: ACCENT, fillOpacity: 0.16 }),
      line(band, { x: "0", y: "1", stroke: ACCENT, strokeWidth: 0.75, strokeDasharray: "2 2" }),
      line(band, { x: "0", y: "2", stroke: ACCENT, strokeWidth: 0.75, strokeDasharray: "2 2" }),
    );
  }
  curves.forEach(({ points }, i) => {
    marks.push(
      line(points, {
        x: "0",
        y: "1",
        stroke: i === 0 ? ACCENT : INK,
        strokeWidth: 1.75,
        strokeDasharray: dashOf(i),
      }),
    );
  });
  if (level !== undefined) {
    marks.push(
      ruleY([level.y], { stroke: INK, strokeDasharray: "4 3" }),
      text([level], {
        y: "y",
        text: "label",
        ...(startsFartherFrom(level.y, curves)
          ? { frameAnchor: "left", textAnchor: "start", dx: 4 }
          : { frameAnchor: "right", textAnchor: "end", dx: -4 }),
        dy: level.y < highest / 4 ? -8 : 8,
        fill: INK,
        stroke: PAPER,
        strokeWidth: 4,
      }),
    );
  }
  if (measured.length > 0) {
    marks.push(dot(measured, { x: "0", y: "1", stroke: INK, fill: PAPER, r: 3.5 }));
  }
  if (here !== undefined) {
    marks.push(
      ruleX([here], { x: "0", y2: "1", y1: floor, stroke: FAINT, strokeDasharray: "1 3" }),
      dot([here], { x: "0", y: "1", fill: INK, r: 5, symbol: "diamond" }),
    );
  }
  if (isNamed) {
    marks.push(
      text(spread(ends, 200), {
        x: "x",
        y: "y",
        text: "label",
        textAnchor: "start",
        dx: 6,
        fill: INK,
      }),
    );
  }
  return plot({
    ...look(width),
    height: 240,
    marginRight: room,
    marginLeft: 48,
    marginBottom: 40,
    x: { label: axisLabel(x), labelAnchor: "center", labelArrow: "none", nice: false },
    y: {
      label: axisLabel(y),
      labelAnchor: "top",
      labelArrow: "none",
      zero: y.fromZero !== false,
      nice: true,
    },
    marks,
  });
}

/** Whether the curves are farther from a level where they start than where they end: there its name has room. */
function startsFartherFrom(level: number, curves: Curves["curves"]): boolean {
  const nearest = (end: 0 | -1) =>
    Math.min(...curves.map(({ points }) => Math.abs((points.at(end)?.[1] ?? level) - level)));
  return nearest(0) > nearest(-1);
}

/** The lowest that is drawn. */
function lowestOf({ curves, band = [], measured = [], here, level }: Curves): number {
  const drawn = [...curves.flatMap(({ points }) => points), ...band, ...measured];
  const heights = [...drawn, ...(here === undefined ? [] : [here])].map(([, height]) => height);
  return Math.min(...heights, level?.y ?? Number.POSITIVE_INFINITY);
}

interface End {
  readonly label: string;
  readonly x: number;
  readonly y: number;
}

const LINE = 13;

/** Ends whose names would lie on one another are moved apart, as little as the height allows. */
function spread(ends: readonly End[], height: number): readonly End[] {
  const top = Math.max(...ends.map(({ y }) => y), 0);
  const step = (LINE * top) / height;
  let free = Number.NEGATIVE_INFINITY;
  return [...ends]
    .sort((one, other) => one.y - other.y)
    .map((end) => {
      const y = Math.max(end.y, free);
      free = y + step;
      return { ...end, y };
    });
}
