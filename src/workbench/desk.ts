/** What lies on the desk: the one workbook that is open, where it came from, and whether it was changed. */
import { ICommandService } from "@univerjs/core";
import { FormulaDataModel, IDefinedNamesService } from "@univerjs/engine-formula";
import {
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  SetRangeValuesMutation,
  SetWorksheetNameMutation,
  SetWorksheetOrderMutation,
} from "@univerjs/sheets";
import type { Book } from "../workbook/book";
import type { PlannedBook } from "../workbook/layout/planned";
import type { OpenedWorkbook } from "../workbook/read/read-workbook";
import { BesideCells } from "./following/beside-cells";
import { type Grid, workbookOf } from "./grid";
import { gridBook } from "./grid-book";
import { readGrid } from "./read-grid";

/** Where a workbook came from: saving keeps what the grid does not show of it. */
export type Source =
  | { readonly kind: "template"; readonly planned: PlannedBook }
  | { readonly kind: "file"; readonly opened: OpenedWorkbook };

export interface Lying {
  readonly title: string;
  /** The name of its file, with the extension. */
  readonly fileName: string;
  readonly source: Source;
}

/** After these, cells no longer stand where they stood in the source. */
const reshaping = new Set<string>(
  [
    InsertColMutation,
    InsertRowMutation,
    MoveColsMutation,
    MoveRowsMutation,
    RemoveColMutation,
    RemoveRowMutation,
    RemoveSheetMutation,
    SetWorksheetNameMutation,
    SetWorksheetOrderMutation,
  ].map(({ id }) => id),
);

export class Desk {
  #lying: Lying | undefined;
  #changed = false;
  #reshaped = false;
  #count = 0;
  /** What the sheets hold that the grid knows nothing of. */
  readonly beside: BesideCells;

  constructor(private readonly grid: Grid) {
    this.beside = new BesideCells(grid);
    grid.injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      const reshapes = reshaping.has(id) || (id === InsertSheetMutation.id && this.#isOfFile());
      if (reshapes) this.#reshaped = true;
      // The engine's own results are no change of a person's.
      const typed = id === SetRangeValuesMutation.id && !options?.onlyLocal;
      if (reshapes || typed || id === InsertSheetMutation.id) this.#changed = true;
    });
  }

  /** A template is built again with the sheets that were added; a file that was opened cannot take them. */
  #isOfFile(): boolean {
    return this.#lying?.source.kind === "file";
  }

  get lying(): Lying | undefined {
    return this.#lying;
  }

  /** Whether something would be lost if it were put away now. */
  get changed(): boolean {
    return this.#changed;
  }

  /** Whether rows, columns or sheets are no longer those of the source. */
  get reshaped(): boolean {
    return this.#reshaped;
  }

  saved(): void {
    this.#changed = false;
  }

  put(lying: Lying): void {
    const before = workbookOf(this.grid);
    // Ends whatever is being typed or renamed: it belongs to the workbook that goes.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    if (before) this.grid.api.disposeUnit(before.getUnitId());
    const { source } = lying;
    const book: Book = source.kind === "template" ? source.planned : source.opened.book;
    const workbook = this.grid.api.createWorkbook(gridBook(book, `book-${this.#count++}`));
    const first = firstToShow(book, source.kind === "template");
    const sheet = workbook.getSheetBySheetId(sheetId(first));
    if (sheet) workbook.setActiveSheet(sheet);
    this.beside.forgetAll();
    if (source.kind === "template") {
      const { sheets } = source.planned;
      this.beside.take(
        sheets,
        sheets.map((_, index) => sheetId(index)),
      );
    }
    this.#lying = lying;
    this.#changed = false;
    this.#reshaped = false;
  }

  /**
   * Puts sheets of a plan behind the others. A template goes on from there as if it had had them: their
   * charts and validations are saved with them.
   */
  join(added: PlannedBook, insert: () => void): void {
    const reshaped = this.#reshaped;
    insert();
    const { source } = this.#lying ?? {};
    if (!this.#lying || source?.kind !== "template") return;
    this.#lying = {
      ...this.#lying,
      source: { kind: "template", planned: joined(source.planned, added) },
    };
    this.#reshaped = reshaped;
  }

  /** The workbook as it now stands in the grid. */
  read(): Book {
    const workbook = workbookOf(this.grid);
    if (!workbook) throw new Error("No workbook is open.");
    const model = this.grid.injector.get(FormulaDataModel);
    const names = this.grid.injector.get(IDefinedNamesService);
    return readGrid(workbook, model, names.getDefinedNameMap(workbook.getUnitId()) ?? {});
  }
}

const sheetId = (index: number) => `sheet-${index}`;

const joined = (first: PlannedBook, second: PlannedBook): PlannedBook => ({
  ...first,
  sheets: [...first.sheets, ...second.sheets],
  tables: [...first.tables, ...second.tables],
  definedNames: [...first.definedNames, ...second.definedNames],
  styles: { ...second.styles, ...first.styles },
});

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
