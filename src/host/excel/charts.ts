import { palette } from "../../workbook/layout/looks";
import type { CellsOf, PlannedChart, PlannedSeries } from "../../workbook/layout/planned";
import {
  colourOf,
  isOverColumns,
  lineWidth,
  MARKER_SIZE,
  markerOf,
  shapeOf,
} from "../../workbook/layout/series-looks";
import type { AxisPlan, ChartKind } from "../../workbook/plan";

const TYPES = {
  columns: "ColumnClustered",
  "stacked columns": "ColumnStacked",
  "full columns": "ColumnStacked100",
  bars: "BarClustered",
  "stacked bars": "BarStacked",
  lines: "Line",
  points: "XYScatter",
  "points and lines": "XYScatterLines",
  curve: "XYScatterLinesNoMarkers",
} as const satisfies Record<ChartKind, `${Excel.ChartType}`>;

const POINTS_PER_PIXEL = 0.75;

/** Draws a planned chart over the cells of the sheets that were added. */
export function addChart(
  worksheet: Excel.Worksheet,
  plan: PlannedChart,
  rangeOf: (cells: CellsOf) => Excel.Range,
): void {
  const [first] = plan.series;
  if (first === undefined) return;
  const chart = worksheet.charts.add(TYPES[plan.chart], rangeOf(first.values), "Columns");
  chart.name = plan.title;
  chart.setPosition(worksheet.getCell(plan.row, plan.column));
  chart.width = plan.width * POINTS_PER_PIXEL;
  chart.height = plan.height * POINTS_PER_PIXEL;
  chart.title.text = plan.title;
  chart.title.format.font.color = palette.ink;
  chart.title.format.font.size = 12;
  chart.legend.visible = plan.series.length > 1;
  chart.legend.position = "Bottom";
  describeAxis(chart.axes.categoryAxis, plan.x);
  describeAxis(chart.axes.valueAxis, plan.y);
  plan.series.forEach((series, index) => {
    const drawn = index === 0 ? chart.series.getItemAt(0) : chart.series.add(series.name);
    drawn.name = series.name;
    drawn.setValues(rangeOf(series.values));
    if (series.x !== undefined) drawn.setXAxisValues(rangeOf(series.x));
    drawSeries(drawn, series, plan.chart, index);
  });
}

function describeAxis(axis: Excel.ChartAxis, { title, format, from, to }: AxisPlan): void {
  axis.title.text = title;
  axis.title.format.font.color = palette.ink;
  if (format !== undefined) axis.numberFormat = format;
  if (from !== undefined) axis.minimum = from;
  if (to !== undefined) axis.maximum = to;
}

function drawSeries(
  drawn: Excel.ChartSeries,
  { role }: PlannedSeries,
  kind: ChartKind,
  index: number,
): void {
  const colour = colourOf(role, index);
  const shape = shapeOf(kind, role);
  if (shape === "columns") {
    drawn.format.fill.setSolidColor(colour);
    return;
  }
  if (isOverColumns(kind, role)) drawn.chartType = "Line";
  const { line } = drawn.format;
  if (shape === "points") line.lineStyle = "None";
  else {
    line.color = colour;
    line.weight = lineWidth(role);
    if (role === "limit") line.lineStyle = "Dash";
    if (role === "band") line.lineStyle = "RoundDot";
  }
  drawn.markerStyle = shape === "line" ? "None" : markerOf(index);
  if (shape === "line") return;
  drawn.markerSize = MARKER_SIZE;
  drawn.markerBackgroundColor = colour;
  drawn.markerForegroundColor = colour;
}

/** How the ranges of a chart are found: on the new sheets, under the names that they got. */
export const rangeIn =
  (context: Excel.RequestContext) =>
  ({ sheet, area }: CellsOf): Excel.Range =>
    context.workbook.worksheets
      .getItem(sheet)
      .getRangeByIndexes(area.row, area.column, area.rows, area.columns);
