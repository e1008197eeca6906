import * as core from "@univerjs/core";
import * as formula from "@univerjs/engine-formula";
import { afterEach, expect, test, vi } from "vitest";
import { mend } from "../../../src/engine/mends/mend";
import { sheetIdAt, snapshotOf } from "../../../src/engine/snapshot";
import { book, sheet } from "../sheet";

const ID = "read-by";
const univer = new core.Univer({ logLevel: core.LogLevel.SILENT, locale: core.LocaleType.EN_US });
univer.registerPlugin(formula.UniverFormulaEnginePlugin);
const injector = univer.__getInjector();
mend(injector, formula);
const sheets = [
  sheet("S", { A1: "=SUM(T!A1:A2)", A2: "=A1+1" }),
  sheet("T", { A1: 2, A2: 3, B1: "=SUM(A1:A2)" }),
];
univer.createUnit(
  core.UniverInstanceType.UNIVER_SHEET,
  snapshotOf(book(sheets), ID, { rows: 50, columns: 20 }),
);

const [s, t] = [sheetIdAt(0), sheetIdAt(1)];
const cell = { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 };
const first = { unitId: ID, sheetId: t, range: cell };

/** Computes as the grid does after an entry in the first cell of T, or after rows were put into a sheet. */
async function compute(how: { all?: boolean; forgotten?: string } = {}): Promise<void> {
  const model = injector.get(formula.FormulaDataModel);
  const service = injector.get(formula.ICalculateFormulaService);
  const done = new Promise<void>((resolve) => {
    const told = service.executionCompleteListener$.subscribe(() => {
      told.unsubscribe();
      resolve();
    });
  });
  await service.execute({
    formulaData: model.getFormulaData(),
    arrayFormulaCellData: {},
    arrayFormulaRange: {},
    forceCalculate: how.all ?? false,
    dirtyRanges: [first],
    dirtyNameMap: {},
    dirtyDefinedNameMap: {},
    dirtyUnitFeatureMap: {},
    dirtyUnitOtherFormulaMap: {},
    ...(how.forgotten && { clearDependencyTreeCache: { [ID]: { [how.forgotten]: "1" } } }),
  });
  await done;
}

/** The formulas that read the first cell of T, as often as they are held. */
function readers(): readonly number[] {
  const service = injector.get(formula.IDependencyManagerService) as unknown as {
    _dependencyRTreeCache: core.RTree;
  };
  return [...service._dependencyRTreeCache.searchGenerator(first)] as number[];
}

afterEach(() => vi.restoreAllMocks());

test("What a formula reads is held once, however many entries there are.", async () => {
  await compute({ all: true });
  expect(readers()).toHaveLength(2);
  for (let entry = 0; entry < 3; entry++) await compute();
  expect(readers()).toHaveLength(2);
});

test.each([
  ["the sheet that reads", s],
  ["the sheet that is read", t],
])("Rows that are put into %s leave no formula behind that is there no more.", async (_, into) => {
  const logged = vi.spyOn(console, "error").mockImplementation(() => {});
  await compute({ all: true });
  await compute({ forgotten: into });
  expect(readers()).toHaveLength(2);
  await compute();
  expect(readers()).toHaveLength(2);
  expect(logged).not.toHaveBeenCalled();
});
