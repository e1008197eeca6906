import {
  axisX,
  axisY,
  dot,
  gridX,
  gridY,
  line,
  type Markish,
  plot,
  rect,
  ruleX,
  ruleY,
} from "@observablehq/plot";
import { FAINT, INK, look, RULE } from "../../pane/pictures/look";
import { dashOf, EDGE, fillOf, inkOf, isMarked, rimOf, symbolOf, widthOf } from "./look";
import type { ChartPicture, PicturedAxis, PicturedSeries, Point } from "./picture";
import { type Places, placesOf } from "./places";
import { textWidth } from "./text-width";

const LINE = 13;
const TICK = 10;
/** About so many marks on a line are enough to tell it from the others. */
const MARKS_ON_LINE = 6;

/** What is drawn, on its axes. */
export function drawPlot(picture: ChartPicture, width: number, height: number): Element {
  const { x, y, lying } = picture;
  const down = lying ? x : y;
  const across = lying ? y : x;
  const titleRoom = (axis: PicturedAxis) => (axis.title === "" ? 0 : LINE + 7);
  const names = lying
    ? placesOf(picture, height, Math.round(width * 0.4), true)
    : placesOf(picture, width - 80, width, false);
  const downLabels = lying && names ? names.labels : down.labels;
  const marginLeft = Math.max(0, ...downLabels.map(widest)) + TICK + titleRoom(down) + 4;
  const lines =
    names && !lying ? Math.max(1, ...names.labels.map((one) => one.split("\n").length)) : 1;
  const marginBottom = LINE * lines + TICK + titleRoom(across);
  return plot({
    ...look(width),
    height,
    marginLeft,
    marginBottom,
    marginTop: 8,
    marginRight: 16,
    x: { domain: [across.from, across.to], nice: false },
    y: { domain: lying ? [down.to, down.from] : [down.from, down.to], nice: false },
    marks: [
      lying ? gridX(y.ticks, gridLook) : gridY(y.ticks, gridLook),
      axisX({
        ...axisLook(across, lying ? undefined : names),
        anchor: "bottom",
        labelAnchor: "center",
        labelOffset: marginBottom - 6,
      }),
      axisY({
        ...axisLook(down, lying ? names : undefined),
        anchor: "left",
        labelAnchor: "center",
        labelOffset: marginLeft - 2,
      }),
      ...marksOf(picture),
      baseline(picture),
    ],
  });
}

const gridLook = { stroke: RULE, strokeOpacity: 1 };
const widest = (label: string) => Math.max(...label.split("\n").map(textWidth));

function axisLook(axis: PicturedAxis, names: Places | undefined) {
  const ticks = names?.at ?? axis.ticks;
  const labels = names?.labels ?? axis.labels;
  return {
    ticks: [...ticks],
    tickFormat: (at: number) => labels[ticks.indexOf(at)] ?? "",
    tickSize: names ? 0 : 4,
    tickPadding: names ? 7 : 3,
    label: axis.title === "" ? null : axis.title,
    labelArrow: "none" as const,
    color: FAINT,
    fill: INK,
  };
}

function marksOf(picture: ChartPicture): Markish[] {
  const { series, lying, x, y } = picture;
  const inside = ({ x: across, y: up }: Point) =>
    across >= x.from && across <= x.to && up >= y.from && up <= y.to;
  // Columns first, then lines, then points, so that none hides what is finer than itself.
  const order = { columns: 0, line: 1, "line and points": 2, points: 3 };
  return [...series]
    .sort((one, other) => order[one.shape] - order[other.shape])
    .flatMap((one): Markish[] => {
      if (one.shape === "columns") return [columnsMark(one, lying)];
      const drawn = one.points.filter(inside);
      const marks: Markish[] = [];
      if (one.shape !== "points") marks.push(lineMark(one));
      if (isMarked(one, series))
        marks.push(dotMark(one, one.shape === "line" ? some(drawn, one.look) : drawn));
      return marks;
    });
}

/** A few of the points, others for each series, so that their marks do not lie on one another. */
function some(points: readonly Point[], look: number): Point[] {
  const step = Math.max(1, Math.ceil(points.length / MARKS_ON_LINE));
  return points.filter((_, index) => index % step === look % step);
}

function columnsMark(series: PicturedSeries, lying: boolean): Markish {
  const along = { left: "left", right: "right", low: "low", high: "high" } as const;
  const ends = lying
    ? { x1: along.low, x2: along.high, y1: along.left, y2: along.right }
    : { x1: along.left, x2: along.right, y1: along.low, y2: along.high };
  return rect(series.columns, {
    ...ends,
    fill: fillOf(series),
    stroke: EDGE,
    strokeWidth: 0.75,
    clip: true,
  });
}

const lineMark = (series: PicturedSeries): Markish =>
  line(series.points, {
    x: "x",
    y: "y",
    stroke: inkOf(series),
    strokeWidth: widthOf(series),
    strokeDasharray: dashOf(series),
    clip: true,
  });

const dotMark = (series: PicturedSeries, points: readonly Point[]): Markish =>
  dot(points, {
    x: "x",
    y: "y",
    symbol: symbolOf(series),
    r: 3.5,
    fill: inkOf(series),
    stroke: rimOf(series),
    strokeWidth: 1,
  });

/** The line from which the columns rise, or on which the axis stands. */
function baseline({ lying, y }: ChartPicture): Markish {
  const at = [Math.min(Math.max(0, y.from), y.to)];
  return lying ? ruleX(at, { stroke: FAINT }) : ruleY(at, { stroke: FAINT });
}
