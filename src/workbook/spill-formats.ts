/** Number formats of values that a formula put into cells without one: those of the cells that it shows. */
import { type Book, type Cell, cellAt, type GrowingCells, putCell, type Sheet } from "./book";
import { cellsOf, cellsWithin } from "./cells-within";
import { type Region, regionsOf } from "./formula/regions";

/** A column that a formula reads: the numbers in it, and the format of the first of them. */
interface Source {
  readonly numbers: ReadonlySet<number>;
  readonly format: string | undefined;
}

class Formats {
  readonly styles: Record<string, Book["styles"][string]>;
  readonly #sources = new Map<string, readonly Source[]>();

  constructor(
    private readonly book: Book,
    private readonly copies: (formula: string) => boolean,
  ) {
    this.styles = { ...book.styles };
  }

  sheet(sheet: Sheet, wanted: (formula: string) => boolean): Sheet {
    const cells: GrowingCells = {};
    for (const [row, column, { formula, spill }] of cellsOf(sheet)) {
      if (formula === undefined || !wanted(formula)) continue;
      const area = { row, column, rows: 1, columns: 1, ...spill };
      const sources = this.copies(formula) ? this.#sourcesOf(formula, sheet.name) : [];
      for (let offset = 0; offset < area.columns; offset++)
        this.#column(sheet, cells, { ...area, column: column + offset }, offset, sources);
    }
    const lines = Object.entries(cells).map(([row, line]) => [
      row,
      { ...sheet.cells[Number(row)], ...line },
    ]);
    return { ...sheet, cells: { ...sheet.cells, ...Object.fromEntries(lines) } };
  }

  #column(
    sheet: Sheet,
    cells: GrowingCells,
    { row, column, rows }: { row: number; column: number; rows: number },
    offset: number,
    sources: readonly (readonly Source[])[],
  ): void {
    const filled = Array.from({ length: rows }, (_, at) => cellAt(sheet, row + at, column));
    const numbers = filled.flatMap((cell) => (typeof cell?.value === "number" ? [cell.value] : []));
    if (numbers.length === 0) return;
    // The column in the same place first: a number may stand in others, too.
    const shown = sources
      .flatMap((columns) => [...columns.slice(offset, offset + 1), ...columns])
      .find((source) => numbers.every((number) => source.numbers.has(number)));
    const format = shown?.format ?? this.#formatOf(filled[0]);
    if (format === undefined) return;
    filled.forEach((cell, at) => {
      if (typeof cell?.value !== "number" || this.#formatOf(cell) !== undefined) return;
      putCell(cells, row + at, column, { ...cell, style: this.#formatted(cell.style, format) });
    });
  }

  #formatOf = (cell: Cell | undefined) => this.book.styles[cell?.style ?? ""]?.format;

  #formatted(style: string | undefined, format: string): string {
    const key = `${style ?? ""} ${format}`;
    this.styles[key] ??= { ...this.book.styles[style ?? ""], format };
    return key;
  }

  #sourcesOf(formula: string, home: string): (readonly Source[])[] {
    return regionsOf(formula, home, this.book).map((region) => {
      const key = JSON.stringify(region);
      const known = this.#sources.get(key) ?? this.#columnsOf(region);
      this.#sources.set(key, known);
      return known;
    });
  }

  #columnsOf({ sheet: name, area }: Region): readonly Source[] {
    const sheet = this.book.sheets.find((its) => its.name === name);
    const columns = new Map<number, { numbers: Set<number>; format: string | undefined }>();
    for (const [, column, cell] of sheet ? cellsWithin(sheet, area) : []) {
      if (typeof cell.value !== "number") continue;
      const source = columns.get(column) ?? { numbers: new Set(), format: this.#formatOf(cell) };
      columns.set(column, source);
      source.numbers.add(cell.value);
    }
    const last = Math.max(-1, ...columns.keys());
    return Array.from(
      { length: Math.max(0, last - area.column + 1) },
      (_, at) => columns.get(area.column + at) ?? { numbers: new Set<number>(), format: undefined },
    );
  }
}

/**
 * The book with formats for what the wanted formulas fill. Those that copy show cells that they name: a value
 * that stands in a column of these has its format; any other has that of the formula's row above it.
 */
export function withSpillFormats(
  book: Book,
  wanted: (formula: string) => boolean,
  copies: (formula: string) => boolean,
): Book {
  const formats = new Formats(book, copies);
  const sheets = book.sheets.map((sheet) => formats.sheet(sheet, wanted));
  return { ...book, sheets, styles: formats.styles };
}
