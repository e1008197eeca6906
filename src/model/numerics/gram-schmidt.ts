import { dot, sumOfSquares } from "../vectors";

/**
 * Least squares min ‖A·x − b‖ for a few long columns, by modified Gram–Schmidt. The columns are made
 * orthogonal in place; the right-hand side is treated as one more column, which makes the method
 * backward stable. Solving AᵀA·x = Aᵀb this way keeps the digits that forming AᵀA would lose.
 *
 * Source: Björck, Solving linear least squares problems by Gram–Schmidt orthogonalization, BIT 7 (1967) 1–21.
 */
export class GramSchmidt {
  /** The columns of A, to be filled before each `factorise`. */
  readonly columns: readonly number[][];
  private readonly triangle: readonly number[][];

  constructor(rows: number, columns: number) {
    this.columns = Array.from({ length: columns }, () => new Array<number>(rows).fill(0));
    this.triangle = Array.from({ length: columns }, () => new Array<number>(columns).fill(0));
  }

  factorise(): void {
    for (let j = 0; j < this.columns.length; j++) {
      const column = this.columns[j] as number[];
      const row = this.triangle[j] as number[];
      const length = Math.sqrt(sumOfSquares(column));
      row[j] = length;
      for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) / length;
      for (let k = j + 1; k < this.columns.length; k++)
        row[k] = removeAlong(column, this.columns[k] as number[]);
    }
  }

  /** The solution for a right-hand side, which is used up; returns ‖A·x‖². */
  solve(side: number[], into: number[]): number {
    let explained = 0;
    for (let j = 0; j < this.columns.length; j++) {
      const along = removeAlong(this.columns[j] as number[], side);
      into[j] = along;
      explained += along * along;
    }
    for (let j = this.columns.length - 1; j >= 0; j--) {
      const row = this.triangle[j] as number[];
      let rest = into[j] as number;
      for (let k = j + 1; k < this.columns.length; k++)
        rest -= (row[k] as number) * (into[k] as number);
      into[j] = rest / (row[j] as number);
    }
    return explained;
  }
}

/** Takes from a vector its part along a unit vector, and returns how long that part was. */
function removeAlong(unit: number[], vector: number[]): number {
  const along = dot(unit, vector);
  for (let i = 0; i < unit.length; i++)
    vector[i] = (vector[i] as number) - along * (unit[i] as number);
  return along;
}
