/** How a series of a planned chart looks, whoever draws it: the writer of files, Excel, the workbench. */
import type { ChartKind, SeriesPlan } from "../plan";
import { limitColour, palette, seriesColours } from "./looks";

type Role = NonNullable<SeriesPlan["role"]>;

export type SeriesShape = "columns" | "line" | "points" | "line and points";

const lying: ReadonlySet<ChartKind> = new Set(["bars", "stacked bars"]);
const upright: ReadonlySet<ChartKind> = new Set(["columns", "stacked columns", "full columns"]);

/** Whether the categories of a chart go down and its values across. */
export const isLying = (kind: ChartKind): boolean => lying.has(kind);

/** Whether a series is drawn over columns that others have: a limit is a line also there; bars have no such line. */
export const isOverColumns = (kind: ChartKind, role: Role): boolean =>
  upright.has(kind) && role === "limit";

export function shapeOf(kind: ChartKind, role: Role): SeriesShape {
  if (isLying(kind) || (upright.has(kind) && !isOverColumns(kind, role))) return "columns";
  if (role === "measured" || kind === "points") return "points";
  return kind === "points and lines" && role === "line" ? "line and points" : "line";
}

/** By its role, else by its place among the series. */
export function colourOf(role: Role, place: number): string {
  if (role === "limit") return limitColour;
  return role === "band" ? palette.grey : (seriesColours[place % seriesColours.length] as string);
}

/** Points. */
export const lineWidth = (role: Role): number => (role === "band" ? 1 : 2.25);

const markers = ["Circle", "Square", "Triangle", "Diamond"] as const;

export const markerOf = (place: number) =>
  markers[place % markers.length] as (typeof markers)[number];

export const MARKER_SIZE = 6;
