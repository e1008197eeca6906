/** A planned chart over the cells as they are now, as plain data: what is drawn where, and what the axes say. */
import type { PlannedChart, PlannedSeries } from "../../workbook/layout/planned";
import { isLying, type SeriesShape, shapeOf } from "../../workbook/layout/series-looks";
import type { AxisPlan, ChartKind } from "../../workbook/plan";
import { type Axis, axisOf } from "./axis";
import { numberText } from "./number-text";
import {
  drawnCells,
  failsIn,
  labelOf,
  numberIn,
  type ShownCell,
  type ShownCells,
} from "./shown-cells";
import { columnsOf } from "./stacking";

export interface ChartPicture {
  readonly title: string;
  /** The bars lie: their categories go down, their values across. */
  readonly lying: boolean;
  /** The names of the places along x; none where x is a scale. */
  readonly categories?: readonly string[];
  readonly x: PicturedAxis;
  readonly y: PicturedAxis;
  readonly series: readonly PicturedSeries[];
  /** How many of the drawn cells show an error. */
  readonly failing: number;
  /** Whether there is any number to draw. */
  readonly blank: boolean;
}

export interface PicturedAxis extends Axis {
  readonly title: string;
  /** What stands at the ticks. */
  readonly labels: readonly string[];
}

export interface PicturedSeries {
  readonly name: string;
  readonly role: PlannedSeries["role"];
  /** Its place in the order of looks. */
  readonly look: number;
  readonly shape: SeriesShape;
  readonly columns: readonly PicturedColumn[];
  /** For the other shapes; NaN interrupts a line. */
  readonly points: readonly Point[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** From `left` to `right` along x, from `low` to `high` along y. */
export interface PicturedColumn {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Whether the places along x are named, and no scale. */
const isByCategory = (kind: ChartKind) => kind === "lines" || shapeOf(kind, "line") === "columns";

interface Read {
  readonly plan: PlannedSeries;
  readonly values: readonly ShownCell[];
  readonly x: readonly ShownCell[] | undefined;
}

export function pictureOf(chart: PlannedChart, cells: ShownCells): ChartPicture {
  const read = chart.series.map(
    (plan): Read => ({
      plan,
      values: drawnCells(cells, plan.values, chart.drawsHidden),
      x: plan.x && drawnCells(cells, plan.x, chart.drawsHidden),
    }),
  );
  const byCategory = isByCategory(chart.chart);
  const series = picturedSeries(chart.chart, read, byCategory);
  const drawn = series.flatMap(({ points, columns }) => [
    ...points.map(({ y }) => y),
    ...columns.flatMap(({ low, high }) => [low, high]),
  ]);
  const numbers = drawn.filter(Number.isFinite);
  const along = series.flatMap(({ points }) => points.map(({ x }) => x)).filter(Number.isFinite);
  const categories = byCategory ? categoriesOf(read, chart.x) : undefined;
  return {
    title: chart.title,
    lying: isLying(chart.chart),
    ...(categories && { categories }),
    x: categories
      ? { title: chart.x.title, from: -0.5, to: categories.length - 0.5, ticks: [], labels: [] }
      : picturedAxis(chart.x, along, formatOf(read.flatMap(({ x }) => x ?? []))),
    y: picturedAxis(
      chart.chart === "full columns" ? { format: "0%", ...chart.y } : chart.y,
      numbers,
      formatOf(read.flatMap(({ values }) => values)),
    ),
    series,
    failing: read.flatMap(({ values, x }) => [...values, ...(x ?? [])]).filter(failsIn).length,
    blank: numbers.length === 0,
  };
}

function picturedSeries(kind: ChartKind, read: readonly Read[], byCategory: boolean) {
  const standing = read.filter(({ plan }) => shapeOf(kind, plan.role) === "columns");
  const columns = columnsOf(
    kind,
    standing.map(({ values }) => values.map(numberIn)),
  );
  return read.map((one, look): PicturedSeries => {
    const shape = shapeOf(kind, one.plan.role);
    const place = standing.indexOf(one);
    return {
      name: one.plan.name,
      role: one.plan.role,
      look,
      shape,
      columns: columns[place] ?? [],
      points: shape === "columns" ? [] : pointsOf(one, byCategory),
    };
  });
}

/** A scale takes the x of a point from its cell; where cells give none at all, points are counted. */
function pointsOf({ values, x }: Read, byCategory: boolean): Point[] {
  const counted = byCategory || x === undefined;
  return values.map((value, index) => {
    const cell = x?.[index];
    const across = counted ? (byCategory ? index : index + 1) : cell ? numberIn(cell) : Number.NaN;
    const y = numberIn(value);
    return Number.isNaN(across) || Number.isNaN(y)
      ? { x: Number.NaN, y: Number.NaN }
      : { x: across, y };
  });
}

function categoriesOf(read: readonly Read[], { format }: AxisPlan): string[] {
  const named = read.find(({ x }) => x !== undefined)?.x ?? [];
  const count = Math.max(1, ...read.map(({ values }) => values.length));
  return Array.from({ length: count }, (_, index) => {
    const cell = named[index];
    return cell ? labelOf(cell, format) : String(index + 1);
  });
}

const formatOf = (cells: readonly ShownCell[]) =>
  cells.find(({ value }) => typeof value === "number")?.format;

function picturedAxis(
  { title, format, from, to }: AxisPlan,
  values: readonly number[],
  cellFormat: string | undefined,
): PicturedAxis {
  const axis = axisOf(values, { from, to });
  const labels = axis.ticks.map((tick) => numberText(tick, format ?? cellFormat));
  return { ...axis, title, labels };
}
