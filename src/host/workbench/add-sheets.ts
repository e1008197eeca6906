import {
  type ICellData,
  ICommandService,
  type IMutationInfo,
  IUndoRedoService,
  type IWorksheetData,
  mergeWorksheetSnapshotWithDefault,
  sequenceExecute,
  type Workbook,
} from "@univerjs/core";
import { AddDataValidationMutation, RemoveDataValidationMutation } from "@univerjs/data-validation";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { InsertSheetMutation, RemoveSheetMutation } from "@univerjs/sheets";
import {
  AddConditionalRuleMutation,
  DeleteConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { gridNames } from "../../engine/snapshot";
import { gridBook } from "../../workbench/book/grid-book";
import { gridRules } from "../../workbench/book/grid-rules";
import type { Desk } from "../../workbench/desk";
import type { Grid } from "../../workbench/grid/grid";
import type { Taken } from "../../workbook/layout/free-names";
import type { PlannedBook } from "../../workbook/layout/planned";
import { openWorkbook, refuseWhileEditing } from "./sheet";
import { takenNames } from "./taken";

interface Step {
  readonly todo: IMutationInfo;
  readonly undo: IMutationInfo;
}

/** The ids of what was added before are taken; a number of our own keeps new ones apart from them. */
let added = 0;

/** See SheetHost.addSheets. Names come first, so that no formula is read before they are known. */
export function addSheets(
  grid: Grid,
  desk: Desk,
  makeBook: (taken: Taken) => PlannedBook,
): readonly string[] {
  refuseWhileEditing(grid);
  const workbook = openWorkbook(grid);
  const book = makeBook(takenNames(grid));
  const prefix = `added-${added++}`;
  const sheets = worksheetsOf(book, workbook, prefix);
  const steps = [
    ...nameSteps(book, workbook, prefix),
    ...sheetSteps(sheets, workbook),
    ...ruleSteps(book, workbook, sheets),
  ];
  const todo = steps.map((step) => step.todo);
  const undo = steps.map((step) => step.undo).reverse();
  sequenceExecute(todo, grid.injector.get(ICommandService));
  grid.injector
    .get(IUndoRedoService)
    .pushUndoRedo({ unitID: workbook.getUnitId(), undoMutations: undo, redoMutations: todo });
  desk.beside.take(
    book,
    sheets.map(({ id }) => id),
  );
  const open = grid.api.getActiveWorkbook();
  const first = open?.getSheetBySheetId(sheets[0]?.id ?? "");
  if (first) open?.setActiveSheet(first);
  return book.sheets.map(({ name }) => name);
}

function nameSteps(book: PlannedBook, workbook: Workbook, prefix: string): Step[] {
  const unitId = workbook.getUnitId();
  return Object.values(gridNames(book)).map((name) => {
    const params = { ...name, id: `${prefix}-${name.id}`, unitId };
    return {
      todo: { id: SetDefinedNameMutation.id, params },
      undo: { id: RemoveDefinedNameMutation.id, params },
    };
  });
}

function sheetSteps(sheets: readonly IWorksheetData[], workbook: Workbook): Step[] {
  const unitId = workbook.getUnitId();
  const behind = workbook.getSheets().length;
  return sheets.map((sheet, at) => ({
    todo: { id: InsertSheetMutation.id, params: { unitId, index: behind + at, sheet } },
    undo: {
      id: RemoveSheetMutation.id,
      params: { unitId, subUnitId: sheet.id, subUnitName: sheet.name },
    },
  }));
}

/** Each rule goes in front of those that are there: the first one last. */
function ruleSteps(book: PlannedBook, workbook: Workbook, sheets: readonly IWorksheetData[]) {
  const unitId = workbook.getUnitId();
  return gridRules(book).flatMap(({ formats, entryRules }, at): Step[] => {
    const sheet = { unitId, subUnitId: sheets[at]?.id ?? "" };
    return [
      ...[...formats].reverse().map((rule) => ({
        todo: { id: AddConditionalRuleMutation.id, params: { ...sheet, rule } },
        undo: { id: DeleteConditionalRuleMutation.id, params: { ...sheet, cfId: rule.cfId } },
      })),
      {
        todo: { id: AddDataValidationMutation.id, params: { ...sheet, rule: entryRules } },
        undo: {
          id: RemoveDataValidationMutation.id,
          params: { ...sheet, ruleId: entryRules.map(({ uid }) => uid) },
        },
      },
    ];
  });
}

type CellData = Record<number, Record<number, ICellData>>;

/** The sheets as the grid takes them, their looks among those of the workbook. */
function worksheetsOf(book: PlannedBook, workbook: Workbook, prefix: string): IWorksheetData[] {
  const snapshot = gridBook(book, workbook.getUnitId());
  const looks = new Map(
    Object.entries(snapshot.styles ?? {}).map(([key, look]) => [
      key,
      workbook.getStyles().setValue(look),
    ]),
  );
  return (snapshot.sheetOrder ?? []).map((id) => {
    const sheet = snapshot.sheets?.[id] ?? {};
    for (const line of Object.values((sheet.cellData ?? {}) as CellData))
      for (const cell of Object.values(line))
        if (typeof cell.s === "string") cell.s = looks.get(cell.s) ?? null;
    return mergeWorksheetSnapshotWithDefault({ ...sheet, id: `${prefix}-${id}` });
  });
}
