import type { Area, Extent } from "../book";
import type { CellsOf } from "./planned";

/** The cells that a series draws now: of a spill, only as far as its formula reaches. */
export function drawnArea({ area, spillAt }: CellsOf, extent: Extent | undefined): Area {
  if (!extent || !spillAt) return area;
  const within = (room: number, reach: number) => Math.max(1, Math.min(room, reach));
  const rows = within(area.rows, spillAt.row + extent.rows - area.row);
  const columns = within(area.columns, spillAt.column + extent.columns - area.column);
  return { ...area, rows, columns };
}
