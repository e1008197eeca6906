import type { Workbook } from "@univerjs/core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { calculate } from "../../../src/engine/calculate";
import { Failures } from "../../../src/engine/failures";
import { mend } from "../../../src/engine/mends/mend";
import { packages } from "../../../src/engine/node";
import { readCells } from "../../../src/engine/read-cells";
import { gridNames, snapshotOf } from "../../../src/engine/snapshot";
import { book, sheet } from "../sheet";

const { core, formula } = packages;
const univer = new core.Univer({ logLevel: core.LogLevel.SILENT, locale: core.LocaleType.EN_US });
const injector = univer.__getInjector();

beforeAll(() => {
  univer.registerPlugin(formula.UniverFormulaEnginePlugin);
  mend(injector, formula);
});
afterAll(() => univer.dispose());

/** Opens a workbook where another was open before, as the workbench does, and computes its cell C1. */
async function opened(id: string, written: string, dose: string): Promise<unknown> {
  const definedNames = [{ name: "dose", formula: `S!${dose}` }];
  const content = book([sheet("S", { A1: 2, B1: 5, C1: written })], { definedNames });
  const room = { rows: 20, columns: 10 };
  const workbook: Workbook = univer.createUnit(
    core.UniverInstanceType.UNIVER_SHEET,
    snapshotOf(content, id, room),
  );
  injector.get(formula.IDefinedNamesService).registerDefinedNames(id, gridNames(content));
  await calculate(formula, injector, workbook, new Failures());
  const cells = readCells(injector.get(formula.FormulaDataModel), workbook.getActiveSheet());
  injector.get(core.IUniverInstanceService).disposeUnit(id);
  return cells.get(0)?.get(2)?.value;
}

test.each([
  ["a name stands elsewhere in", "=dose*2", [4, 10]],
  ["a name of its own stands in a formula of", "=LET(x,dose,y,x+1,x*y)", [6, 30]],
  ["a LAMBDA is called in", "=LAMBDA(x,x+dose)(1)", [3, 6]],
])("%s the workbook that is opened next", async (_, written, expected) => {
  const answers = [];
  for (const [index, dose] of ["$A$1", "$B$1"].entries())
    answers.push(await opened(`${written}-${index}`, written, dose));
  expect(answers).toEqual(expected);
});
