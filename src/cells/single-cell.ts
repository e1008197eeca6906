import { impossible } from "../model/refusal";
import { ErrorInInput } from "./answer";
import { type Cell, type Cells, isError, plainValue } from "./cell";

/** The value of an argument that must be one cell. */
export function singleCell(name: string, cells: Cells): Cell {
  if (cells.length !== 1 || cells[0]?.length !== 1) {
    impossible(
      `${name} is a range of ${cells.length} × ${cells[0]?.length ?? 0} cells. Give one cell.`,
    );
  }
  const value = plainValue(cells[0][0]);
  if (isError(value)) throw new ErrorInInput(value);
  return value;
}
