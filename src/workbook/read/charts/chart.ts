/** What a chart part says, as far as it is a chart of the kinds that a plan knows. */
import type { PlannedChart, PlannedSeries } from "../../layout/planned";
import type { AxisPlan, ChartKind } from "../../plan";
import { cellsIn } from "./references";
import { at, childrenOf, type Node, valueAt, within } from "./tree";

export type ReadChart = Omit<PlannedChart, "row" | "column" | "width" | "height" | "alt">;

const MOST_SERIES = 50;

/** A group is what charts are put together of: columns, and lines over them. */
const GROUPS = ["barChart", "lineChart", "scatterChart"];

/** Undefined for a chart of another kind, and for one of which no series names cells. */
export function chartIn(part: Node): ReadChart | undefined {
  const plot = at(part, "chartSpace", "chart", "plotArea");
  const groups = (plot?.children ?? []).filter(({ name }) => name.endsWith("Chart"));
  const axes = (plot?.children ?? []).filter(({ name }) => name.endsWith("Ax"));
  const [first, over] = groups;
  if (!first || groups.length > 2 || axes.length !== 2) return undefined;
  if (groups.some(({ name }) => !GROUPS.includes(name))) return undefined;
  const series = seriesOf(first);
  const limits = over ? seriesOf(over) : [];
  // Lines over columns are known as limits, and only limits are known over columns.
  const isLimited = over?.name === "lineChart" && limits.every(({ role }) => role === "limit");
  const kind = kindOf(first);
  if (kind === undefined || (over && !(isLimited && kind.includes("columns")))) return undefined;
  const all = [...series, ...limits].sort((one, other) => one.order - other.order);
  const kept = all.flatMap((one) => one.planned ?? []);
  if (kept.length === 0 || all.length > MOST_SERIES) return undefined;
  const [x, y] = axesOf(first, axes);
  return {
    chart: kind,
    title: titleOf(at(part, "chartSpace", "chart")),
    x: axisOf(x),
    y: axisOf(y),
    series: kept,
    ...(valueAt(at(part, "chartSpace", "chart"), "plotVisOnly") === "0" && { drawsHidden: true }),
  };
}

function kindOf(group: Node): ChartKind | undefined {
  const grouping = valueAt(group, "grouping") ?? "standard";
  if (group.name === "barChart") {
    const lies = valueAt(group, "barDir") === "bar";
    if (grouping === "stacked") return lies ? "stacked bars" : "stacked columns";
    if (grouping === "percentStacked") return lies ? undefined : "full columns";
    return lies ? "bars" : "columns";
  }
  if (group.name === "lineChart") return grouping === "standard" ? "lines" : undefined;
  const series = childrenOf(group, "ser");
  if (series.every((one) => isBare(one))) return "points";
  const lines = series.filter((one) => roleOf(one) === "line");
  return lines.some(isMarked) ? "points and lines" : "curve";
}

interface ReadSeries {
  readonly order: number;
  readonly role: PlannedSeries["role"];
  /** Undefined where it names no cells. */
  readonly planned: PlannedSeries | undefined;
}

function seriesOf(group: Node): ReadSeries[] {
  return childrenOf(group, "ser").map((node): ReadSeries => {
    const role = group.name === "barChart" ? "line" : roleOf(node);
    const values = cellsIn(referenceIn(at(node, "val") ?? at(node, "yVal")));
    const x = cellsIn(referenceIn(at(node, "cat") ?? at(node, "xVal")));
    const name = nameOf(node);
    return {
      order: Number(valueAt(node, "order") ?? 0),
      role,
      planned: values && { name, role, values, ...(x && { x }) },
    };
  });
}

const referenceIn = (node: Node | undefined) =>
  (at(node, "numRef", "f") ?? at(node, "strRef", "f"))?.text;

/** What it is called: written in it, or kept as a copy of what the cell said. */
function nameOf(series: Node): string {
  const [value] = within(at(series, "tx"), "v");
  return value?.text ?? "";
}

const isBare = (series: Node) => at(series, "spPr", "ln", "noFill") !== undefined;
const isMarked = (series: Node) => valueAt(series, "marker", "symbol") !== "none";

function roleOf(series: Node): PlannedSeries["role"] {
  if (isBare(series)) return "measured";
  const dash = valueAt(series, "spPr", "ln", "prstDash");
  if (dash === "dash") return "limit";
  return dash === "sysDot" ? "band" : "line";
}

/** The axis of the places or of x, and that of the values. */
function axesOf(group: Node, axes: readonly Node[]): [x: Node | undefined, y: Node | undefined] {
  const isX = (axis: Node) =>
    group.name === "scatterChart"
      ? ["b", "t"].includes(valueAt(axis, "axPos") ?? "")
      : axis.name !== "valAx";
  return [axes.find(isX), axes.find((axis) => !isX(axis))];
}

function axisOf(axis: Node | undefined): AxisPlan {
  const format = at(axis, "numFmt")?.attributes;
  const [from, to] = ["min", "max"].map((end) => Number(valueAt(axis, "scaling", end)));
  return {
    title: titleOf(axis),
    ...(format?.formatCode && format.sourceLinked !== "1" && { format: format.formatCode }),
    ...(from !== undefined && Number.isFinite(from) && { from }),
    ...(to !== undefined && Number.isFinite(to) && { to }),
  };
}

const titleOf = (node: Node | undefined): string =>
  [...within(at(node, "title", "tx"), "t")].map(({ text }) => text).join("");
