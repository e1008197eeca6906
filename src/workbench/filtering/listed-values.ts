/** What a column holds, each once as its cells show it, with how often: to choose from. */
import type { Value } from "../../workbook/book";
import { partsOfSerial } from "../../workbook/dates";
import type { ChosenValues, DateParts } from "../../workbook/filter";
import { inOrder } from "../sorting/order";
import { isBlank, type SeenCell } from "./passes";

export interface ListedValue {
  /** Blank for cells without content. */
  readonly text: string;
  readonly count: number;
  /** One of its cells. */
  readonly cell: SeenCell;
  /** The days, or moments, that show so. */
  readonly dates: readonly DateParts[];
}

/** In the order in which they would be sorted. */
export function listedValues(cells: readonly SeenCell[]): ListedValue[] {
  const found = new Map<string, { text: string; cells: SeenCell[] }>();
  for (const cell of cells) {
    const text = isBlank(cell) ? "" : cell.text;
    const key = text.toLowerCase();
    const known = found.get(key);
    if (known) known.cells.push(cell);
    else found.set(key, { text, cells: [cell] });
  }
  const all = [...found.values()].map(({ text, cells }): ListedValue => {
    const [cell] = cells as [SeenCell, ...SeenCell[]];
    return { text, count: cells.length, cell, dates: datesOf(cells) };
  });
  const valueAt = (at: number): Value => all[at]?.cell.value ?? null;
  return inOrder([...all.keys()], valueAt, "ascending").map((at) => all[at] as ListedValue);
}

function datesOf(cells: readonly SeenCell[]): DateParts[] {
  const dates = new Map<string, DateParts>();
  for (const { value, isDate } of cells) {
    if (!isDate || typeof value !== "number") continue;
    const whole = partsOfSerial(value);
    const parts = Number.isInteger(value) ? whole.slice(0, 3) : whole;
    dates.set(parts.join("-"), parts);
  }
  return [...dates.values()];
}

export function chosenValues(values: readonly ListedValue[]): ChosenValues {
  return {
    kind: "values",
    texts: values.flatMap(({ text, dates }) => (text === "" || dates.length > 0 ? [] : [text])),
    dates: values.flatMap(({ dates }) => dates),
    blank: values.some(({ text }) => text === ""),
  };
}
