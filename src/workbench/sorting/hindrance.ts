/** Why rows cannot be sorted, in a sentence. */
import { addressOf, areaAddress } from "../../workbook/address";
import { overlap } from "../../workbook/areas";
import type { Area } from "../../workbook/book";

export interface Surroundings {
  /** What formulas fill, one cell or many. */
  readonly spills: readonly Area[];
  readonly merged: readonly Area[];
  /** Tables other than the one that is sorted. */
  readonly tables: readonly { readonly name: string; readonly area: Area }[];
}

export function hindranceOf(
  area: Area,
  { spills, merged, tables }: Surroundings,
): string | undefined {
  if (area.rows < 2) return "There are no two rows to sort here.";
  const table = tables.find((one) => overlap(one.area, area));
  if (table)
    return `${areaAddress(area)} also holds cells of the table ${table.name}: select those rows alone that are not beside it.`;
  const spill = spills.find((one) => one.rows * one.columns > 1 && overlap(one, area));
  if (spill)
    return `The formula in ${addressOf(spill.row, spill.column)} fills ${areaAddress(spill)}: rows with a part of that cannot be sorted.`;
  const uneven = merged.find((one) => overlap(one, area) && !isInEveryRow(one, merged, area));
  if (uneven)
    return `The cells ${areaAddress(uneven)} are merged, and not in every row alike: such rows cannot be sorted.`;
  return undefined;
}

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
