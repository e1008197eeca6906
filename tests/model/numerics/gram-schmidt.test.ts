import fc from "fast-check";
import { expect, test } from "vitest";
import { GramSchmidt } from "../../../src/model/numerics/gram-schmidt";

function solution(columns: number[][], side: number[]): { x: number[]; explained: number } {
  const squares = new GramSchmidt(side.length, columns.length);
  for (const [j, column] of columns.entries())
    for (const [i, value] of column.entries()) (squares.columns[j] as number[])[i] = value;
  squares.factorise();
  const x = new Array<number>(columns.length).fill(0);
  const explained = squares.solve([...side], x);
  return { x, explained };
}

test("a line through points, by hand", () => {
  // (0, 1), (1, 3), (2, 4): slope 1.5, intercept 7/6; the fitted values are 7/6, 16/6, 25/6.
  const { x, explained } = solution(
    [
      [1, 1, 1],
      [0, 1, 2],
    ],
    [1, 3, 4],
  );
  expect(x[0]).toBeCloseTo(7 / 6, 14);
  expect(x[1]).toBeCloseTo(1.5, 14);
  expect(explained).toBeCloseTo((49 + 256 + 625) / 36, 12);
});

test("keeps the digits where the normal equations lose them all", () => {
  // Läuchli's columns: with e = 1e-9 the products of columns are 1 to the last digit of a double.
  const e = 1e-9;
  const { x } = solution(
    [
      [1, e, 0, 0],
      [1, 0, e, 0],
      [1, 0, 0, e],
    ],
    [6, e, 2 * e, 3 * e],
  );
  for (const [i, expected] of [1, 2, 3].entries()) expect(x[i]).toBeCloseTo(expected, 5);
});

test("leaves a rest that is at right angles to every column", () => {
  const number = fc.integer({ min: -50, max: 50 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(number, number, number), { minLength: 5, maxLength: 20 }),
      (rows) => {
        const columns = [0, 1].map((j) =>
          rows.map((row, i) => (row[j] as number) + (i === j ? 300 : 0)),
        );
        const side = rows.map((row) => row[2]);
        const { x } = solution(columns, side);
        const rest = side.map((value, i) =>
          columns.reduce(
            (left, column, j) => left - (column[i] as number) * (x[j] as number),
            value,
          ),
        );
        for (const column of columns)
          expect(
            Math.abs(column.reduce((sum, value, i) => sum + value * (rest[i] as number), 0)),
          ).toBeLessThan(1e-8);
      },
    ),
  );
});
