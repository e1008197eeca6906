/** The open grid's formula engine without a screen: a workbook in, the same workbook computed out. */
import type { Workbook } from "@univerjs/core";
import type { Book } from "../workbook/book";
import { calculate } from "./calculate";
import type { CellPlace } from "./cell-place";
import { type Circles, circlesOf } from "./circles";
import { followErrors } from "./error-origins";
import { type EngineFormula, executorsOf } from "./executor";
import { Failures } from "./failures";
import { fittedOf } from "./fitted";
import type { LoadedFunctions } from "./functions";
import { leaveOutFiltered, markedRows } from "./hidden-rows";
import { mend } from "./mends/mend";
import { type Recalculation, recalculated } from "./recalculation";
import { gridNames, type Room, roomFor, snapshotOf, TEXT } from "./snapshot";

export interface Engine {
  /** Computes every formula; the book that was given stays as it is. */
  recalculate(book: Book): Promise<Recalculation>;
}

/** The two packages of the grid that a calculation needs. */
export interface Packages {
  readonly core: typeof import("@univerjs/core");
  readonly formula: EngineFormula;
}

/** As large as a sheet can be: whole columns then cost time, so this is for books that need it. */
const FULL_ROOM: Room = { rows: 1_048_576, columns: 16_384 };

let booksSoFar = 0;

export function createEngine(packages: Packages, loaded: LoadedFunctions): Engine {
  return {
    async recalculate(book) {
      const first = await compute(packages, loaded, book, roomFor(book));
      // These may come only from a sheet that was made too small for an answer or a reference.
      const cramped = first.failures.some(({ error }) => error === "#SPILL!" || error === "#REF!");
      return cramped ? compute(packages, loaded, book, FULL_ROOM) : first;
    },
  };
}

/** Numbers that come from a circle mean nothing: an error takes their place. */
function refuseCircles(workbook: Workbook, { inside, below }: Circles, failures: Failures): void {
  const error = "#REF!";
  const refuse = (cell: CellPlace, message: string) => {
    const { sheetId, row, column } = cell;
    const cells = workbook.getSheetBySheetId(sheetId)?.getCellMatrix();
    cells?.setValue(row, column, { ...cells.getValue(row, column), v: error, t: TEXT });
    failures.replace(cell, { error, message, row: 0, column: 0 });
  };
  for (const cell of inside)
    refuse(
      cell,
      "The formula reads its own answer, itself or through other cells. Break the circle.",
    );
  for (const cell of below)
    refuse(cell, "The formula reads a cell that reads its own answer. Break that circle.");
}

async function compute(
  { core, formula }: Packages,
  loaded: LoadedFunctions,
  book: Book,
  room: Room,
): Promise<Recalculation> {
  const univer = new core.Univer({ logLevel: core.LogLevel.SILENT, locale: core.LocaleType.EN_US });
  try {
    univer.registerPlugin(formula.UniverFormulaEnginePlugin);
    const injector = univer.__getInjector();
    mend(injector, formula);
    // The engine keeps parsed formulas by the id of their workbook for as long as the program runs.
    const id = `book-${booksSoFar++}`;
    const snapshot = snapshotOf(book, id, room);
    const workbook: Workbook = univer.createUnit(core.UniverInstanceType.UNIVER_SHEET, snapshot);

    const failures = new Failures();
    const context = {
      formula,
      failures,
      sheetName: (sheetId: string) => workbook.getSheetBySheetId(sheetId)?.getName() ?? "",
    };
    followErrors(injector, context);
    injector
      .get(formula.IFunctionService)
      .registerExecutors(fittedOf(formula, failures), ...executorsOf(loaded, context));
    injector.get(formula.IDefinedNamesService).registerDefinedNames(id, gridNames(book));
    leaveOutFiltered(formula, injector, (sheetId, from, to) =>
      markedRows(workbook.getSheetBySheetId(sheetId), from, to),
    );

    const circular = await calculate(formula, injector, workbook, failures);
    if (circular) refuseCircles(workbook, await circlesOf(formula, injector, workbook), failures);
    return recalculated(formula, book, workbook, injector.get(formula.FormulaDataModel), failures);
  } finally {
    univer.dispose();
  }
}
