import { column, find, IDENTITY } from "./bundle";
import { growth, type Measured, ratio } from "./measure";

const ROWS = 10_000;
const invocation = { address: "Sheet1!A1" };
const retained = column(ROWS, (row) => 5 + row * 1e-4);
const retention = column(ROWS, (row) => 0.5 + row * 1e-5);

/** The same division over the same cells, by hand and without a check. */
function byHand(dividends: readonly unknown[][], divisors: readonly unknown[][]): number[][] {
  const answer = new Array<number[]>(dividends.length);
  for (let row = 0; row < dividends.length; row += 1) {
    const dividend = (dividends[row] as unknown[])[0] as number;
    answer[row] = [dividend / ((divisors[row] as unknown[])[0] as number)];
  }
  return answer;
}

export function elementwise(): Measured[] {
  // Other functions run too, as in any workbook, so that the common path is not tuned to one of them.
  for (let warm = 0; warm < 20; warm += 1) {
    find("DOSE.PRODUCT")(retained, retention, null, invocation);
    find("EFFLUENT.CONCENTRATION")(retained, retained, invocation);
    find("RETENTION.LOOP")(retention, retention, retention, invocation);
  }
  const expected = byHand(retained, retention);
  const answer = find("DOSE.TARGET")(retained, retention, invocation);
  if (JSON.stringify(answer) !== JSON.stringify(expected)) throw new Error("answers differ");

  const inOneCall = ratio(
    () => find("DOSE.TARGET")(retained, retention, invocation),
    () => byHand(retained, retention),
    41,
  );
  const cells = retained.map((line, i) => [[line], [retention[i]]] as const);
  const oneByOne = (id: string) => () => {
    let last: unknown;
    for (const [one, other] of cells) last = find(id)(one, other, invocation);
    return last;
  };
  const singly = ratio(oneByOne("DOSE.TARGET"), oneByOne(IDENTITY), 41);
  const sizes = [1e2, 1e3, 1e4, 1e5, 1e6];
  const rowsOf = (size: number) => column(size, (i) => 1 + (i % 100));
  const growthByHand = growth(sizes, (size) => {
    const rows = rowsOf(size);
    return () => byHand(rows, rows);
  });
  return [
    {
      work: "10,000 rows in one call, DOSE.TARGET",
      measured: inOneCall,
      limit: 3,
      unit: "× a loop by hand",
      note: "same cells, same division, no check",
    },
    {
      work: "10,000 single calls, DOSE.TARGET",
      measured: singly,
      limit: 6,
      unit: "× a function that returns its argument",
      note: "found by id each time",
    },
    {
      work: "rows 10² → 10⁶ in one call",
      measured: growth(sizes, (size) => {
        const rows = rowsOf(size);
        return () => find("DOSE.TARGET")(rows, [[0.5]], invocation);
      }),
      limit: 1.1,
      unit: "exponent",
      note: `DOSE.TARGET; the loop by hand has ${growthByHand.toFixed(2)}`,
    },
  ];
}
