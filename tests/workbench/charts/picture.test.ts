import { describe, expect, test } from "vitest";
import { pictureOf } from "../../../src/workbench/charts/picture";
import type { ShownCells } from "../../../src/workbench/charts/shown-cells";
import type { Extent, Value } from "../../../src/workbook/book";
import type { CellsOf, PlannedChart, PlannedSeries } from "../../../src/workbook/layout/planned";
import type { ChartKind } from "../../../src/workbook/plan";

const failed: Value = { error: "#N/A" };
/** Categories in column 0, numbers in the columns behind it; what column 2 holds was spilled from its top. */
const sheet: readonly (readonly Value[])[] = [
  ["fibre", 1, 10],
  ["fines", 5, 20],
  ["filler", -2, 30],
  ["dissolved", null, 40],
];
const cellsOf = (
  values: readonly (readonly Value[])[],
  spill?: Extent,
  format?: string,
  hiddenRows: readonly number[] = [],
): ShownCells => ({
  isHidden: (_sheet, row) => hiddenRows.includes(row),
  at: (_, row, column) => ({ value: values[row]?.[column] ?? null, format }),
  spillAt: (_, row, column) => (row === 0 && column === 2 ? spill : undefined),
});
const column = (index: number, rows = 4): CellsOf => ({
  sheet: "Where",
  area: { row: 0, column: index, rows, columns: 1 },
});
const spilled: CellsOf = { ...column(2), spillAt: { row: 0, column: 2 } };

const series = (
  name: string,
  values: CellsOf,
  more: Partial<PlannedSeries> = {},
): PlannedSeries => ({ name, role: "line", values, x: column(0), ...more });
const chart = (kind: ChartKind, ...all: PlannedSeries[]): PlannedChart => ({
  row: 0,
  column: 5,
  width: 400,
  height: 300,
  chart: kind,
  title: "Where it goes",
  alt: "Columns.",
  x: { title: "Where" },
  y: { title: "Starch (kg/t)", from: 0, format: "0.0" },
  series: all,
});

describe("columns", () => {
  test("stand at their places, as high as the cells say, above the names of the categories", () => {
    const picture = pictureOf(chart("columns", series("held", column(1))), cellsOf(sheet));
    expect(picture.categories).toEqual(["fibre", "fines", "filler", "dissolved"]);
    expect(picture.series[0]?.columns).toMatchObject([
      { low: 0, high: 1 },
      { low: 0, high: 5 },
      { low: -2, high: 0 },
    ]);
    const centres = picture.series[0]?.columns.map(({ left, right }) => (left + right) / 2);
    expect(centres).toEqual([0, 1, 2]);
  });

  test("of two series stand side by side and do not overlap", () => {
    const both = chart("columns", series("one", column(1)), series("other", column(2)));
    const [one, other] = pictureOf(both, cellsOf(sheet)).series.map(({ columns }) => columns[0]);
    expect(one?.right).toBeCloseTo(other?.left as number, 12);
    expect(((one?.left as number) + (other?.right as number)) / 2).toBeCloseTo(0, 12);
  });

  test("are stacked up from 0, and down from it where they are negative", () => {
    const both = chart("stacked columns", series("one", column(1)), series("other", column(2)));
    const [one, other] = pictureOf(both, cellsOf(sheet)).series;
    expect(other?.columns.map(({ low, high }) => [low, high])).toEqual([
      [1, 11],
      [5, 25],
      [0, 30],
      [0, 40],
    ]);
    expect(one?.columns[2]).toMatchObject({ low: -2, high: 0 });
  });

  test("fill the whole height as parts of it", () => {
    const both = chart("full columns", series("one", column(1)), series("other", column(2)));
    const picture = pictureOf(both, cellsOf(sheet));
    expect(picture.series[1]?.columns[0]).toMatchObject({ low: 1 / 11, high: 1 });
    expect(picture.series[1]?.columns[3]).toMatchObject({ low: 0, high: 1 });
  });

  test("lie where the chart has bars", () => {
    const picture = pictureOf(chart("bars", series("held", column(1))), cellsOf(sheet));
    expect(picture.lying).toBe(true);
    expect(picture.series[0]?.columns).toHaveLength(3);
  });

  test("have a limit drawn over them as a line", () => {
    const limit = series("limit", column(2), { role: "limit" });
    const picture = pictureOf(chart("columns", series("held", column(1)), limit), cellsOf(sheet));
    expect(picture.series[1]).toMatchObject({ shape: "line", columns: [] });
    expect(picture.series[1]?.points[0]).toEqual({ x: 0, y: 10 });
    const [first] = picture.series[0]?.columns ?? [];
    expect(((first?.left as number) + (first?.right as number)) / 2).toBeCloseTo(0, 12);
  });
});

describe("a spill", () => {
  const drawn = (extent: Extent | undefined) =>
    pictureOf(chart("columns", series("held", spilled)), cellsOf(sheet, extent)).series[0]?.columns;

  test.each([
    ["fewer rows than its room", { rows: 2, columns: 1 }, 2],
    ["all of its room", { rows: 4, columns: 1 }, 4],
    ["more than its room", { rows: 9, columns: 1 }, 4],
    ["nothing, as no formula spills there", undefined, 4],
  ])("that reaches %s", (_, extent, count) => {
    expect(drawn(extent)).toHaveLength(count);
  });
});

describe("a curve", () => {
  const points = [
    [0, 1],
    [2, failed],
    [4, 3],
    [null, 7],
    ["six", 7],
  ] as const;
  const curve = chart("curve", series("fitted", column(1, 5), { x: column(0, 5) }));

  test("is interrupted where a cell is blank, a text or an error, and says how many fail", () => {
    const picture = pictureOf(curve, cellsOf(points));
    expect(picture.series[0]?.points.map(({ x, y }) => [x, y])).toEqual([
      [0, 1],
      [Number.NaN, Number.NaN],
      [4, 3],
      [Number.NaN, Number.NaN],
      [Number.NaN, Number.NaN],
    ]);
    expect(picture.failing).toBe(1);
    expect(picture.blank).toBe(false);
  });

  test("has scales in the formats of the plan, or else of the cells", () => {
    const picture = pictureOf(curve, cellsOf(points, undefined, "0 %"));
    expect(picture.y.labels[0]).toBe("0.0");
    expect(picture.x.labels[0]).toBe("0 %");
  });

  test("of cells that all fail is blank", () => {
    const picture = pictureOf(curve, cellsOf([[failed, failed]]));
    expect(picture.blank).toBe(true);
    expect(picture.failing).toBe(2);
  });

  test.each([
    ["curve", "measured", "points"],
    ["curve", "band", "line"],
    ["points", "line", "points"],
    ["points and lines", "line", "line and points"],
    ["points and lines", "band", "line"],
    ["lines", "limit", "line"],
  ] as const)("in a chart of %s the role %s is drawn as %s", (kind, role, shape) => {
    const its = chart(kind, series("it", column(1), { role }));
    expect(pictureOf(its, cellsOf(sheet)).series[0]?.shape).toBe(shape);
  });
});

test("dates name the places in the format of the axis", () => {
  const days = chart("lines", series("load", column(1, 2), { x: column(0, 2) }));
  const dated = { ...days, x: { title: "Day", format: "d mmm" } };
  const picture = pictureOf(
    dated,
    cellsOf([
      [45901, 3],
      [45902, 4],
    ]),
  );
  expect(picture.categories).toEqual(["1 Sep", "2 Sep"]);
});

test("rows that are hidden are left out, unless the chart draws them all the same", () => {
  const cells = cellsOf(sheet, undefined, undefined, [1, 2]);
  const [bars, points] = [
    chart("columns", series("held", column(1))),
    chart("points", series("held", column(2), { x: column(1) })),
  ];
  expect(pictureOf(bars, cells).categories).toEqual(["fibre", "dissolved"]);
  expect(pictureOf(points, cells).series[0]?.points).toEqual([
    { x: 1, y: 10 },
    { x: Number.NaN, y: Number.NaN },
  ]);
  expect(pictureOf({ ...bars, drawsHidden: true }, cells).categories).toHaveLength(4);
});
