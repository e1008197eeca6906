/** Why rows cannot be sorted, in a sentence. */
import { addressOf, areaAddress } from "../../workbook/address";
import { holdsCell, overlap } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import type { Spill } from "./spills";

export interface Surroundings {
  readonly spills: readonly Spill[];
  readonly merged: readonly Area[];
  /** Tables other than the one that is sorted. */
  readonly tables: readonly { readonly name: string; readonly area: Area }[];
}

export function hindranceOf(
  area: Area,
  column: number,
  { spills, merged, tables }: Surroundings,
): string | undefined {
  if (area.rows < 2) return "There are no two rows to sort here.";
  const table = tables.find((one) => overlap(one.area, area));
  if (table)
    return `${areaAddress(area)} also holds cells of the table ${table.name}: select those rows alone that are not beside it.`;
  const touching = spills.filter((spill) => overlap(spill.area, area));
  const isFilled = (one: number) => touching.some(({ area }) => holdsCell(area, area.row, one));
  const columns = Array.from({ length: area.columns }, (_, at) => area.column + at);
  const nothingMoves = columns.every(isFilled);
  const torn = touching.find(
    ({ alone, area }) => nothingMoves || !alone || (area.rows === 1 && area.columns > 1),
  );
  if (torn)
    return `${formulaOf(torn)} fills ${areaAddress(torn.area)}: rows with a part of that cannot be sorted.`;
  const sortedBy = touching.find((spill) => holdsCell(spill.area, spill.area.row, column));
  if (sortedBy && !sortedBy.byRow)
    return `${formulaOf(sortedBy)} does not answer row by row: sort by another column.`;
  const uneven = merged.find((one) => overlap(one, area) && !isInEveryRow(one, merged, area));
  if (uneven)
    return `The cells ${areaAddress(uneven)} are merged, and not in every row alike: such rows cannot be sorted.`;
  return undefined;
}

const formulaOf = ({ area }: Spill) => `The formula in ${addressOf(area.row, area.column)}`;

function isInEveryRow({ column, columns, rows }: Area, merged: readonly Area[], area: Area) {
  const alike = merged.filter(
    (one) =>
      one.rows === 1 &&
      one.column === column &&
      one.columns === columns &&
      one.row >= area.row &&
      one.row < area.row + area.rows,
  );
  return rows === 1 && alike.length === area.rows;
}
