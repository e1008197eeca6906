/** Charts that stay with the cells under them and with the cells that they draw. */
import type { CellsOf, PlannedChart, PlannedSeries } from "../../workbook/layout/planned";
import { type Followed, isGone } from "./followed";
import type { Follower } from "./follower";

export interface Corner {
  readonly row: number;
  readonly column: number;
}

/** A chart as it would be planned now. */
export interface ChartNow {
  readonly sheetId: string;
  readonly chart: PlannedChart;
  /** The cell under its corner, whenever it is asked. */
  readonly corner: () => Corner;
  /** The series whose cells are gone. */
  readonly lost: readonly string[];
}

/** What the sheets are called: by id, undefined for one that is gone. */
export type NameOf = (sheetId: string) => string | undefined;

export function followChart(
  follower: Follower,
  home: string,
  chart: PlannedChart,
  idOf: (sheet: string) => string,
): (nameOf: NameOf) => ChartNow {
  const { row, column } = chart;
  const corner = follower.follow(home, { row, column, rows: 1, columns: 1 });
  const series = chart.series.map((one) => followSeries(follower, one, idOf));
  return (nameOf) => {
    const { sheetId, area } = corner();
    const now = series.map((one) => one(nameOf));
    const kept = now.flatMap((one) => one ?? []);
    return {
      sheetId,
      corner: () => cornerOf(corner()),
      chart: { ...chart, row: area.row, column: area.column, series: kept },
      lost: chart.series.filter((_, index) => !now[index]).map(({ name }) => name),
    };
  };
}

function followSeries(
  follower: Follower,
  series: PlannedSeries,
  idOf: (sheet: string) => string,
): (nameOf: NameOf) => PlannedSeries | undefined {
  const values = followCells(follower, series.values, idOf);
  const x = series.x && followCells(follower, series.x, idOf);
  return (nameOf) => {
    const [valuesNow, xNow] = [values(nameOf), x?.(nameOf)];
    // Without the cells of its x a series would be drawn at wrong places.
    if (!valuesNow || (x && !xNow)) return undefined;
    return { ...series, values: valuesNow, ...(xNow && { x: xNow }) };
  };
}

function followCells(
  follower: Follower,
  { sheet, area, spillAt }: CellsOf,
  idOf: (sheet: string) => string,
): (nameOf: NameOf) => CellsOf | undefined {
  const cells = follower.follow(idOf(sheet), area);
  const anchor = spillAt && follower.follow(idOf(sheet), { ...spillAt, rows: 1, columns: 1 });
  return (nameOf) => {
    const name = nameOf(cells().sheetId);
    if (name === undefined || isGone(cells())) return undefined;
    const from = anchor?.();
    const spill = from && !isGone(from) ? { spillAt: cornerOf(from) } : {};
    return { sheet: name, area: cells().area, ...spill };
  };
}

const cornerOf = ({ area: { row, column } }: Followed): Corner => ({ row, column });
