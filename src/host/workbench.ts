import { NAMESPACE } from "../help/reference";
import type { Desk } from "../workbench/desk";
import { type Computed, computeAll } from "../workbench/grid/computed";
import type { Grid } from "../workbench/grid/grid";
import { reveal } from "../workbench/view/reveal";
import type { CallRecord } from "./call-record";
import { HostRefusal, type SheetHost } from "./host";
import { addSheets } from "./workbench/add-sheets";
import { listFailures } from "./workbench/failures";
import { insertFormula, insertTable, insertValues } from "./workbench/insert";
import { readTables } from "./workbench/read-tables";
import { readSelection, watchSelection } from "./workbench/selection";
import { cellsAt, noSuchPlace } from "./workbench/sheet";

export interface WorkbenchChoices {
  readonly grid: Grid;
  readonly desk: Desk;
  readonly computed: Computed;
  readonly record: CallRecord;
  /** Saves the workbook with values in place of our formulas, as a file of its own. */
  saveValuesCopy(): Promise<void>;
  /** Where the pane covers the grid, what was selected from it would stay unseen. */
  showGrid(): void;
}

/** What the grid of the workbench can do for the pane. */
export function workbenchHost(choices: WorkbenchChoices): SheetHost {
  const { grid, desk, computed, record } = choices;
  const recalculate = async () => {
    const done = computed.next();
    computeAll(grid);
    await done;
  };
  return {
    namespace: NAMESPACE,
    can: {
      insertTable: true,
      addSheets: true,
      undoInOneStep: true,
      openValuesCopy: true,
      loadWithWorkbook: false,
    },
    readSelection: async () => readSelection(grid),
    watchSelection: (listener) => watchSelection(grid, computed, listener),
    select: async (address) => {
      const { worksheet, area } = cellsAt(grid, address);
      if (!reveal(grid, worksheet.getSheetId(), area)) throw noSuchPlace();
      choices.showGrid();
    },
    insertFormula: async (...given) => insertFormula(grid, ...given),
    insertValues: async (...given) => insertValues(grid, ...given),
    insertTable: async (...given) => insertTable(grid, ...given),
    addSheets: async (makeBook) => addSheets(grid, desk, makeBook),
    readTables: async (firstHeader) => readTables(grid, firstHeader),
    // Another workbook is computed, too.
    watchTables: (listener) => computed.watch(listener),
    listFailures: async () => listFailures(grid),
    relink: async (failed) => {
      await recalculate();
      const asked = new Set(failed.map(({ address }) => address));
      return listFailures(grid).filter(({ address }) => asked.has(address));
    },
    recalculate,
    callsAt: (address) => record.at(address),
    watchCalls: (listener) => record.watch(listener),
    openValuesCopy: async () => {
      await choices.saveValuesCopy();
      return "saved";
    },
    loadsWithWorkbook: async () => true,
    setLoadsWithWorkbook: async () => {
      throw new HostRefusal("unsupported", "The workbench always loads the functions.");
    },
    // Page and grid follow the system, and so does the pane by itself.
    theme: () => undefined,
  };
}
