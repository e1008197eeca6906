import { functionNames } from "../workbook/formula/stored-form";
import type { CallRecord } from "./call-record";
import { addSheets } from "./excel/add-sheets";
import { hasUndoGroups, inExcel, refusalOf, supports } from "./excel/batch";
import { listFailures, relink } from "./excel/failures";
import { insertFormula, insertTable, insertValues } from "./excel/insert";
import { readTables } from "./excel/read-tables";
import { readSelection, select, watchSelection } from "./excel/selection";
import { openWorkbookFile, readWorkbookFile } from "./excel/workbook-file";
import type { SheetHost } from "./host";

export interface ExcelChoices {
  /** The namespace that the manifest of this build gives to the functions. */
  readonly namespace: string;
  /** The ids of all functions: DOSE.PUMP… */
  readonly ids: readonly string[];
  readonly record: CallRecord;
  /** Makes the copy for a colleague without the add-in out of the workbook's file. */
  makeValuesCopy(file: Uint8Array): Promise<Uint8Array>;
}

/** What Excel can do for the pane: the one place, with the folder beside it, that knows Excel. */
export function excelHost({ namespace, ids, record, makeValuesCopy }: ExcelChoices): SheetHost {
  const names = functionNames(ids, namespace);
  const { requirements } = Office.context;
  const canLoad = requirements.isSetSupported("SharedRuntime", "1.1");
  return {
    namespace,
    can: {
      insertTable: supports("1.9"),
      addSheets: supports("1.9"),
      undoInOneStep: hasUndoGroups(),
      openValuesCopy: supports("1.8") && requirements.isSetSupported("CompressedFile"),
      loadWithWorkbook: canLoad,
    },
    readSelection,
    watchSelection,
    select,
    insertFormula,
    insertValues,
    insertTable,
    addSheets: (makeBook) => addSheets(makeBook, namespace),
    readTables,
    // A pane belongs to one workbook, and reads its tables anew on request.
    watchTables: () => () => {},
    listFailures: () => listFailures(namespace),
    relink: (failed) => relink(failed, namespace, names),
    recalculate: () =>
      inExcel(async (context) => {
        context.application.calculate("Full");
        await context.sync();
      }),
    callsAt: (address) => record.at(address),
    watchCalls: (listener) => record.watch(listener),
    openValuesCopy: async () => {
      await openWorkbookFile(await makeValuesCopy(await readWorkbookFile()));
      return "opened";
    },
    loadsWithWorkbook: async () =>
      canLoad && (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load,
    setLoadsWithWorkbook: async (loads) => {
      const { load, none } = Office.StartupBehavior;
      await Office.addin.setStartupBehavior(loads ? load : none).catch((problem: unknown) => {
        throw refusalOf(problem);
      });
    },
    theme,
  };
}

/** Excel tells its colours, not in every version; a dark ground has a light text. */
function theme(): "light" | "dark" | undefined {
  const { officeTheme } = Office.context as { officeTheme?: Office.OfficeTheme };
  const [, red, green, blue] = (
    /^#?(..)(..)(..)$/.exec(officeTheme?.bodyBackgroundColor ?? "") ?? []
  ).map((part) => Number.parseInt(part, 16));
  if (red === undefined || green === undefined || blue === undefined) return undefined;
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 128 ? "dark" : "light";
}
