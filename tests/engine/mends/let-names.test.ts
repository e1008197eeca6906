import { expect, test } from "vitest";
import { openEngine } from "../../../src/engine/node";
import { probe } from "../probe";
import { book, sheet, shown } from "../sheet";

const engine = openEngine(probe);

test.each([
  ["a name of its own", "LET(x,1,y,x+1,x+y)", 3],
  ["the same name twice, side by side", "LET(x,1,x)+LET(x,2,x)", 3],
  ["a LET in a LET", "LET(a,1,LET(b,a+1,b))", 2],
  ["a LAMBDA that is called at once", "LAMBDA(x,LET(y,x,y+1))(3)", 4],
  ["a LAMBDA in a LET", "LET(k,3,SUM(MAP({1,2},LAMBDA(v,v*k))))", 9],
  ["a name given anew inside", "LET(x,1,LET(x,2,x)+x)", "#NAME?"],
  ["a name that a LAMBDA inside has, too", "LET(x,1,LAMBDA(x,x)(2))", "#NAME?"],
  ["a name that a table has", "LET(run,3,run+1)", 4],
])("LET with %s gives a value or an error in its own cell", async (_, formula, expected) => {
  const cells = { A1: "dose", A2: 4, C1: `=${formula}`, C2: "=1+1" };
  const area = { row: 0, column: 0, rows: 2, columns: 1 };
  const tables = [
    { name: "run", sheet: "S", area, headerRow: true, totalsRow: false, columns: ["dose"] },
  ];
  const result = await engine.recalculate(book([sheet("S", cells)], { tables }));
  expect(shown(result, "C1")).toBe(expected);
  expect(shown(result, "C2")).toBe(2);
});
