import type { SpillPart } from "../../../src/workbook/plan";

/** Columns side by side that one formula each fills, from a row on and with room for so many. */
export const spillColumns =
  (firstRow: number, rows: number) =>
  (
    letter: string,
    name: string,
    headers: string | readonly string[],
    format: string,
    formula: string,
  ): SpillPart => {
    const all = [headers].flat();
    return {
      kind: "spill",
      at: `${letter}${firstRow}`,
      name,
      headers: all,
      formula,
      room: { rows, columns: all.length },
      format,
    };
  };
