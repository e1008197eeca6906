/** What lies on the desk: the one workbook that is open, where it came from, and whether it was changed. */
import { ICommandService, type Nullable, type Workbook } from "@univerjs/core";
import {
  FormulaDataModel,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
} from "@univerjs/engine-formula";
import {
  AddWorksheetMergeMutation,
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  RemoveWorksheetMergeMutation,
  SetColDataMutation,
  SetColHiddenMutation,
  SetColVisibleMutation,
  SetFrozenMutation,
  SetRangeValuesMutation,
  SetRowHiddenMutation,
  SetRowVisibleMutation,
  SetWorksheetColWidthMutation,
  SetWorksheetHideMutation,
  SetWorksheetNameMutation,
  SetWorksheetOrderMutation,
  SetWorksheetRowHeightMutation,
  SetWorksheetRowIsAutoHeightMutation,
} from "@univerjs/sheets";
import { sheetIdAt } from "../engine/snapshot";
import type { Book, DefinedName } from "../workbook/book";
import type { NamedFrame } from "../workbook/layout/filled-in";
import type { PlannedBook, PlannedChart } from "../workbook/layout/planned";
import type { OpenedWorkbook } from "../workbook/read/read-workbook";
import { gridBook } from "./book/grid-book";
import { openedSheets } from "./book/opened-sheets";
import { frameOf, namesOf, readGrid, type SheetFrame } from "./book/read-grid";
import { type NamedSheet, reshapings } from "./book/reshaped";
import { SET_FILTERS } from "./filtering/filters";
import { BesideCells } from "./following/beside-cells";
import { SET_COMMENTS } from "./following/comments";
import { vocabularyOf } from "./formulas/typed-formulas";
import { isEditing } from "./grid/editing";
import { type Grid, workbookOf } from "./grid/grid";

/** Where a workbook came from: saving keeps what the grid does not show of it. */
export type Source =
  | { readonly kind: "template"; readonly planned: PlannedBook }
  | {
      readonly kind: "file";
      readonly opened: OpenedWorkbook;
      /** The charts of the file that can be shown, by sheet. */
      readonly charts: readonly (readonly PlannedChart[])[];
    };

export interface Lying {
  readonly title: string;
  /** The name of its file, with the extension. */
  readonly fileName: string;
  readonly source: Source;
}

/** What the grid made of a workbook when it was opened. */
export interface AtFirst {
  /** What stood around the cells of each sheet. */
  readonly frames: readonly SheetFrame[];
  readonly definedNames: readonly DefinedName[];
  /** What they held beside their cells. */
  readonly beside: readonly NamedFrame[];
}

/** A person's changes of which the source knows nothing; the engine's own results are none. */
const changing = new Set<string>(
  [
    AddWorksheetMergeMutation,
    InsertColMutation,
    InsertRowMutation,
    InsertSheetMutation,
    MoveColsMutation,
    MoveRangeMutation,
    MoveRowsMutation,
    RemoveColMutation,
    RemoveDefinedNameMutation,
    RemoveRowMutation,
    RemoveSheetMutation,
    RemoveWorksheetMergeMutation,
    SetColDataMutation,
    SetColHiddenMutation,
    SetColVisibleMutation,
    SetDefinedNameMutation,
    SetFrozenMutation,
    SetRowHiddenMutation,
    SetRowVisibleMutation,
    SetWorksheetColWidthMutation,
    SetWorksheetHideMutation,
    SetWorksheetNameMutation,
    SetWorksheetOrderMutation,
    SetWorksheetRowHeightMutation,
    SetWorksheetRowIsAutoHeightMutation,
    { id: SET_COMMENTS },
    { id: SET_FILTERS },
  ].map(({ id }) => id),
);

export class Desk {
  #lying: Lying | undefined;
  #changes = 0;
  #saved = 0;
  /** The sheets as they were when the workbook was opened. */
  #sheets: readonly NamedSheet[] = [];
  #atFirst: AtFirst = { frames: [], definedNames: [], beside: [] };
  #count = 0;
  /** What the sheets hold that the grid knows nothing of. */
  readonly beside: BesideCells;

  constructor(private readonly grid: Grid) {
    this.beside = new BesideCells(grid);
    grid.injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      const typed = id === SetRangeValuesMutation.id && !options?.onlyLocal;
      if (typed || changing.has(id)) this.#changes++;
    });
  }

  get lying(): Lying | undefined {
    return this.#lying;
  }

  /** Whether something would be lost if it were put away now. */
  get changed(): boolean {
    return this.#changes > this.#saved || (this.#lying !== undefined && isEditing(this.grid));
  }

  /** How many changes were made. */
  get changes(): number {
    return this.#changes;
  }

  /** What makes rows, columns or sheets others than those of the source, in words. */
  get reshapings(): readonly string[] {
    return reshapings(this.beside.linesMoved, this.#sheets, sheetsOf(workbookOf(this.grid)));
  }

  /** With that many of the changes: what was changed while it was written is not in it. */
  saved(changes: number): void {
    this.#saved = changes;
  }

  put(lying: Lying): void {
    const before = workbookOf(this.grid);
    // Ends whatever is being typed or renamed: it belongs to the workbook that goes.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    if (before) this.grid.api.disposeUnit(before.getUnitId());
    const { source } = lying;
    const book: Book = source.kind === "template" ? source.planned : source.opened.book;
    // Before the grid asks which rows filters hide.
    this.beside.forgetAll();
    this.beside.take(
      source.kind === "template" ? source.planned : openedSheets(source.opened.book, source.charts),
      book.sheets.map((_, index) => sheetIdAt(index)),
    );
    const workbook = this.grid.api.createWorkbook(gridBook(book, `book-${this.#count++}`));
    const first = firstToShow(book, source.kind === "template");
    const sheet = workbook.getSheetBySheetId(sheetIdAt(first));
    if (sheet) workbook.setActiveSheet(sheet);
    this.#lying = lying;
    this.#saved = this.#changes;
    const now = workbookOf(this.grid);
    this.#sheets = sheetsOf(now);
    this.#atFirst = {
      frames: now?.getSheets().map(frameOf) ?? [],
      definedNames: namesOf(this.grid),
      beside: this.beside.frame().sheets,
    };
  }

  get atFirst(): AtFirst {
    return this.#atFirst;
  }

  /** The workbook as it now stands in the grid. */
  read(): Book {
    const workbook = workbookOf(this.grid);
    if (!workbook) throw new Error("No workbook is open.");
    const model = this.grid.injector.get(FormulaDataModel);
    return this.beside.filters.withFilters(readGrid(workbook, model, vocabularyOf(this.grid)));
  }
}

const sheetsOf = (workbook: Nullable<Workbook>): NamedSheet[] =>
  (workbook?.getSheets() ?? []).map((sheet) => ({
    id: sheet.getSheetId(),
    name: sheet.getName(),
  }));

/** A template shows its answer first, a person's own workbook its first sheet. */
function firstToShow(book: Book, computed: boolean): number {
  const index = book.sheets.findIndex(
    ({ cells, hidden }) =>
      !hidden &&
      (!computed ||
        Object.values(cells).some((line) =>
          Object.values(line as Record<number, { formula?: string }>).some((cell) => cell.formula),
        )),
  );
  return Math.max(0, index);
}
