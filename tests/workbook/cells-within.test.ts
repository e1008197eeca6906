import fc from "fast-check";
import { expect, test } from "vitest";
import type { Cell } from "../../src/workbook/book";
import { cellsWithin } from "../../src/workbook/cells-within";

test("the cells of an area are all that stand in it and no others, however large it is", () => {
  const place = fc.record({ row: fc.nat(1500), column: fc.nat(40) });
  const area = fc.record({
    row: fc.nat(1500),
    column: fc.nat(40),
    rows: fc.integer({ min: 1, max: 1_048_576 }),
    columns: fc.integer({ min: 1, max: 16_384 }),
  });
  fc.assert(
    fc.property(fc.array(place), area, (places, its) => {
      const cells: Record<number, Record<number, Cell>> = {};
      for (const { row, column } of places)
        cells[row] = { ...cells[row], [column]: { value: `${row},${column}` } };
      const found = [...cellsWithin({ name: "S", cells }, its)].map(([, , cell]) => cell.value);
      const inside = places.filter(
        ({ row, column }) =>
          row >= its.row &&
          row < its.row + its.rows &&
          column >= its.column &&
          column < its.column + its.columns,
      );
      expect(new Set(found)).toEqual(new Set(inside.map(({ row, column }) => `${row},${column}`)));
      expect(found.length).toBe(new Set(found).size);
    }),
  );
});
