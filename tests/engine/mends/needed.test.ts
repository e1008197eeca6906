import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { calculate } from "../../../src/engine/calculate";
import type { Packages } from "../../../src/engine/engine";
import { Failures } from "../../../src/engine/failures";
import { readCells } from "../../../src/engine/read-cells";
import { snapshotOf } from "../../../src/engine/snapshot";
import { book, sheet } from "../sheet";

const require = createRequire(import.meta.url);

/** The grid's packages as they come: those that all tests of a process share may have been mended. */
function unmendedPackages(): Packages {
  const shared = { ...require.cache };
  for (const file of Object.keys(shared))
    if (file.includes("@univerjs")) delete require.cache[file];
  const packages = {
    core: require("@univerjs/core"),
    formula: require("@univerjs/engine-formula"),
  };
  Object.assign(require.cache, shared);
  return packages;
}

const { core, formula } = unmendedPackages();

/** What the grid's engine makes of formulas by itself. */
async function unmended(content: Parameters<typeof sheet>[1]) {
  const univer = new core.Univer({ logLevel: core.LogLevel.SILENT, locale: core.LocaleType.EN_US });
  univer.registerPlugin(formula.UniverFormulaEnginePlugin);
  const injector = univer.__getInjector();
  const plan = snapshotOf(book([sheet("S", content)]), "plain", { rows: 50, columns: 20 });
  const workbook: import("@univerjs/core").Workbook = univer.createUnit(
    core.UniverInstanceType.UNIVER_SHEET,
    plan,
  );
  await calculate(formula, injector, workbook, new Failures());
  const cells = readCells(injector.get(formula.FormulaDataModel), workbook.getActiveSheet());
  univer.dispose();
  return (row: number, column: number) => {
    const value = cells.get(row - 1)?.get(column)?.value ?? null;
    return typeof value === "object" && value !== null ? value.error : value;
  };
}

/** Faults of the engine: where one is gone, its mend can go, too. */
test.each([
  ["mends/lexer", "SUM(2*{1,2})", "#VALUE!"],
  ["mends/array-constants", 'SUM(LEN({"a,b"}))', 4],
  ["mends/cells", "ISBLANK(A2)", true],
  ["mends/results", "0*-1", -0],
  ["mends/ranges, ends that are ranges", "SUM(INDEX(A7:B8,1,0):INDEX(A7:B8,2,0))", "#NAME?"],
  ["mends/ranges, IF", "SUM(IF(TRUE,A7,A6):A8)", "#NAME?"],
  ["mends/ranges, what they read", "SUM(A6:INDEX(A6:A8,D30))", "#NAME?"],
  ["mends/sheet-size", "SUM(SEQUENCE(51))", "#REF!"],
  ["mends/blank-lookups", "XLOOKUP(0,A4:A5,{1;2})", 1],
  ["natives/operators, comparison", "A2<0.05", true],
  ["natives/operators, text", '1/3&""', "0.3333333333333333"],
  ["natives/criteria", 'COUNTIF(A1:A1,">=1.50")', 0],
  ["natives/arguments, conditions", 'IF("abc",1,2)', 1],
  ["natives/arguments, texts", "LEN(1/3)", 14],
  ["natives/arguments, TEXT", 'TEXT(1.005,"0.00")', "1.00"],
  ["natives/sorting, the range", "SUM(SORT(A6:A8))*0+INDEX(A6:A8*1,1)", 1],
  ["natives/lookups, XLOOKUP", "SUM(A6:XLOOKUP(1,A6:A8,A6:A8))", "#REF!"],
  ["natives/lookups, XLOOKUP of errors", "XLOOKUP(3,A6:A8,B6:B8)", "#N/A"],
  ["natives/lookups, CHOOSE", "VLOOKUP(1,CHOOSE({1,2},A6:A8,A6:A8),2,FALSE)", "#N/A"],
  ["natives/blocks, TAKE", "COLUMNS(TAKE(A6:A8,{1,2}))", 2],
  ["natives, texts that look like numbers", 'CHOOSE(1,"10%")', 0.1],
  ["natives, SEARCH", 'SEARCH("n?r","Liner")', "#VALUE!"],
  ["natives/sorting, text", 'INDEX(SORT({"Liner";"liner"}),1)', "liner"],
  ["natives/sorting, keys", "SUM(SORT({1,2;3,4},{1,2}))", "#VALUE!"],
  ["natives/blocks, choice", "SUM(CHOOSEROWS(A6:A8,{1,2}))", "#VALUE!"],
  ["natives/blocks, stack", "ROWS(VSTACK(1/0,2))", "#DIV/0!"],
  ["natives/unique", 'ROWS(UNIQUE({"a";"A"}))', 2],
  ["natives/extents", "ROWS(A:A)", 50],
  ["natives/aggregate, errors", "AGGREGATE(3,6,B6:B6)", 1],
  ["natives/date-numbers", "YEARFRAC(45292,45658,1)", 366 / 365.5],
])("%s is needed", async (_, formula, fault) => {
  const content = {
    A1: 2,
    A2: '=""',
    A5: 0,
    A6: 3,
    A7: 1,
    A8: 2,
    B6: "=1/0",
    D30: "=D31",
    D31: "=1+1",
    C1: `=${formula}`,
  };
  expect((await unmended(content))(1, 2)).toBe(fault);
});
