import fc from "fast-check";
import { expect, test } from "vitest";
import type { Area } from "../../../src/workbook/book";
import { SpillAreas } from "../../../src/workbook/read/spill-areas";

const holds = (area: Area, row: number, column: number) =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

test("of every cell the area is found that holds it, and an overlap is found out", () => {
  const side = fc.integer({ min: 0, max: 9 });
  const length = fc.integer({ min: 1, max: 4 });
  const area = fc.record({ row: side, column: side, rows: length, columns: length });
  fc.assert(
    fc.property(fc.array(area, { maxLength: 6 }), (areas) => {
      const spills = new SpillAreas(areas);
      for (let row = 0; row < 14; row++) {
        const here = (column: number) => areas.filter((one) => holds(one, row, column));
        const columns = Array.from({ length: 14 }, (_, column) => column);
        if (columns.some((column) => here(column).length > 1)) {
          expect(() => spills.enter(row)).toThrow("overlap");
          return;
        }
        spills.enter(row);
        for (const column of columns) expect(spills.at(column)).toBe(here(column)[0]);
      }
    }),
  );
});
