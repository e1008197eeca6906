import type { TableColumnPlan, TablePart } from "../../../src/workbook/plan";
import { ofFurnish } from "./furnish";

/** The places of the stock line where things join, in the direction of flow. */
export const places = [
  { place: "blend chest", consistency: 0.035 },
  { place: "machine chest", consistency: 0.03 },
  { place: "fan pump", consistency: 0.01 },
] as const;

/** Three orders of addition: at which of the places each joins. Harrow Fen runs the first. */
export const orders = [
  { key: "together", title: "all together", starch: 3, solids: [1, 1, 1] },
  { key: "beforeFiller", title: "before the filler", starch: 2, solids: [1, 1, 3] },
  { key: "fibreFirst", title: "fibre first", starch: 1, solids: [1, 2, 3] },
] as const;

/** The places as a table of inputs. */
export function placesTable(at: string): TablePart {
  return {
    kind: "table",
    at,
    name: "places",
    columns: [
      { key: "place", header: "Place", values: places.map(({ place }) => place) },
      {
        key: "position",
        header: "Position",
        values: places.map((_, index) => index + 1),
        format: "0",
        allow: { whole: { from: 1, to: 20 } },
        help: "Counted downstream from 1.",
      },
      {
        key: "consistency",
        header: "Consistency",
        unit: "fraction",
        values: places.map(({ consistency }) => consistency),
        format: "0.0 %",
        allow: { number: { from: 0.0001, to: 0.25 } },
        help: "Type 1 % or 0.01, never 1. It may not rise downstream.",
      },
    ],
  };
}

/** Further down the stock line there is no place. */
const last = { formula: "MAX({places.position})", words: "the last position" };

/** Where each joins, by order: first what is dosed, then the components of the furnish. */
export function joinsTable(at: string, dosed: string): TablePart {
  return {
    kind: "table",
    at,
    name: "joins",
    columns: [
      { key: "what", header: "Position of", values: [dosed, ...ofFurnish("component")] },
      ...orders.map(
        ({ key, title, starch, solids }): TableColumnPlan => ({
          key,
          header: title,
          values: [starch, ...solids],
          format: "0",
          allow: { whole: { from: 1, to: last } },
          help: "The position at which it joins the stock.",
        }),
      ),
    ],
  };
}
