import type { Chart, ChartSeries, ChartType } from "wasm-xlsxwriter";
import { type Book, cellAt } from "../book";
import { drawnArea } from "../layout/drawn-cells";
import { palette } from "../layout/looks";
import type { CellsOf, PlannedChart, PlannedSeries } from "../layout/planned";
import {
  colourOf,
  isLying,
  isOverColumns,
  lineWidth,
  MARKER_SIZE,
  markerOf,
  shapeOf,
} from "../layout/series-looks";
import type { ChartKind } from "../plan";
import type { Library } from "./library";

function typeOf({ ChartType }: Library, kind: ChartKind): ChartType {
  const types: Record<ChartKind, ChartType> = {
    columns: ChartType.Column,
    "stacked columns": ChartType.ColumnStacked,
    "full columns": ChartType.ColumnPercentStacked,
    bars: ChartType.Bar,
    "stacked bars": ChartType.BarStacked,
    lines: ChartType.Line,
    points: ChartType.Scatter,
    "points and lines": ChartType.ScatterStraightWithMarkers,
    curve: ChartType.ScatterStraightWithMarkers,
  };
  return types[kind];
}

function rangeOf(library: Library, book: Book, cells: CellsOf) {
  const { sheet, spillAt } = cells;
  const home = book.sheets.find(({ name }) => name === sheet);
  const extent = home && spillAt && cellAt(home, spillAt.row, spillAt.column)?.spill;
  const { row, column, rows, columns } = drawnArea(cells, extent);
  const last = [row + rows - 1, column + columns - 1] as const;
  return library.ChartRange.newFromRange(cells.sheet, row, column, ...last);
}

function drawSeries(
  library: Library,
  series: ChartSeries,
  { role }: PlannedSeries,
  kind: ChartKind,
  index: number,
): ChartSeries {
  const {
    ChartFormat,
    ChartLine,
    ChartLineDashType,
    ChartMarker,
    ChartMarkerType,
    ChartSolidFill,
  } = library;
  const colour = () => library.Color.parse(colourOf(role, index));
  // Each setter of the package answers with a changed copy: only what it returns is used.
  const solid = () => new ChartFormat().setSolidFill(new ChartSolidFill().setColor(colour()));
  const shape = shapeOf(kind, role);
  if (shape === "columns") return series.setFormat(solid());
  const type = ChartMarkerType[markerOf(index)];
  const marker =
    shape === "line"
      ? new ChartMarker().setNone()
      : new ChartMarker().setType(type).setSize(MARKER_SIZE).setFormat(solid());
  const stroke = new ChartLine().setColor(colour()).setWidth(lineWidth(role));
  const dash = role === "limit" ? ChartLineDashType.Dash : ChartLineDashType.RoundDot;
  const line = role === "limit" || role === "band" ? stroke.setDashType(dash) : stroke;
  const format =
    shape === "points" ? new ChartFormat().setNoLine() : new ChartFormat().setLine(line);
  return series.setFormat(format).setMarker(marker);
}

/** A planned chart over the values that the book holds. */
export function chartOf(library: Library, book: Book, plan: PlannedChart): Chart {
  const chart = new library.Chart(typeOf(library, plan.chart))
    .setWidth(plan.width)
    .setHeight(plan.height)
    .setAltText(plan.alt);
  const font = () => new library.ChartFont().setColor(library.Color.parse(palette.ink));
  chart.title().setName(plan.title).setFont(font().setSize(12));
  // The package counts the axes of bars from the ground up: its x lies along the bars.
  const [across, along] = isLying(plan.chart) ? [plan.y, plan.x] : [plan.x, plan.y];
  for (const [axis, its] of [
    [chart.xAxis(), across],
    [chart.yAxis(), along],
  ] as const) {
    axis.setName(its.title).setNameFont(font().unsetBold().setSize(10));
    if (its.format !== undefined) axis.setNumFormat(its.format);
    if (its.from !== undefined) axis.setMin(its.from);
    if (its.to !== undefined) axis.setMax(its.to);
  }
  const isOver = ({ role }: PlannedSeries) => isOverColumns(plan.chart, role);
  const over = new library.Chart(typeOf(library, "lines"));
  plan.series.forEach((its, index) => {
    const values = new library.ChartSeries()
      .setName(its.name)
      .setValues(rangeOf(library, book, its.values));
    const series = its.x ? values.setCategories(rangeOf(library, book, its.x)) : values;
    (isOver(its) ? over : chart).pushSeries(drawSeries(library, series, its, plan.chart, index));
  });
  if (plan.series.length === 1) chart.legend().setHidden();
  else chart.legend().setPosition(library.ChartLegendPosition.Bottom);
  return plan.series.some(isOver) ? chart.combine(over) : chart;
}
