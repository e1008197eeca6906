import { addressOf, parseAddress } from "../../../src/workbook/address";
import type { Part } from "../../../src/workbook/plan";
import { year } from "../harrow-fen/year";

/** A month is a name or a date. */
export const MONTH = "mmm yyyy;@";

interface ByMonth {
  /** The first cell of the months; a header stands above it, and the total above that. */
  readonly at: string;
  readonly name: string;
  readonly headers: readonly string[];
  readonly format: readonly string[];
  /** Gives a header, a row a month, and the total; names of the months in its first column. */
  readonly formula: string;
}

/**
 * A table of one month a row. The total stands above the months, so that more months find room below;
 * the names of the months stand in the table of inputs beside it.
 */
export function byMonth({ at, name, headers, format, formula }: ByMonth): Part[] {
  const { row, column } = parseAddress(at);
  return [
    {
      kind: "block",
      at: addressOf(row - 2, column - 1),
      look: "label",
      rows: [["Total"]],
    },
    {
      kind: "spill",
      at: addressOf(row - 2, column),
      name: `${name}Year`,
      formula: `DROP(TAKE(${formula},-1),,1)`,
      room: { rows: 1, columns: headers.length },
      format,
    },
    {
      kind: "spill",
      at,
      name,
      headers,
      formula: `DROP(DROP(${formula},1,1),-1)`,
      room: { rows: year.months.length, columns: headers.length },
      format,
    },
  ];
}
