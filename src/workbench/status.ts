/** The line under the grid: the selected cell in full, why it fails or what belongs into it, and how many cells fail. */
import type { Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { CellAlertManagerService } from "@univerjs/sheets-ui";
import { readValue, spilledRanges } from "../engine/read-cells";
import { addressOf } from "../workbook/address";
import { isError, type Value } from "../workbook/book";
import { type Grid, workbookOf } from "./grid";
import type { Carried } from "./grid-book";

interface SeenCell {
  readonly address: string;
  readonly value: Value;
  /** Why it fails, as far as it is known. */
  readonly message?: string;
  readonly prompt?: string;
}

export interface FailedCell {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export class Status {
  constructor(
    private readonly grid: Grid,
    private readonly line: HTMLElement,
    private readonly count: HTMLButtonElement,
  ) {
    grid.injector.get(SheetsSelectionsService).selectionChanged$.subscribe(() => this.show());
    count.addEventListener("click", () => this.goToNext());
    this.explainOnHover();
  }

  /** After a selection or a calculation. */
  show(): void {
    const cell = this.selected();
    const failed = cell !== undefined && isError(cell.value);
    this.line.classList.toggle("failed", failed);
    this.line.replaceChildren(...(cell ? parts(cell) : []));
  }

  countFailures(): void {
    const { length } = this.failed();
    this.count.hidden = length === 0;
    this.count.textContent =
      length === 1 ? "1 cell fails: show it" : `${length} cells fail: show the next`;
  }

  private selected(): SeenCell | undefined {
    const worksheet = workbookOf(this.grid)?.getActiveSheet();
    const primary = this.grid.injector
      .get(SheetsSelectionsService)
      .getCurrentLastSelectionPrimaryCell();
    if (!worksheet || !primary) return undefined;
    const { actualRow: row, actualColumn: column } = primary;
    const data = worksheet.getCellRaw(row, column);
    const { prompt } = (data?.custom ?? {}) as Carried;
    const value = this.valueAt(worksheet, row, column);
    const message = isError(value)
      ? this.messageAt(worksheet, row, column, value.error)
      : undefined;
    return {
      address: addressOf(row, column),
      value,
      ...(message !== undefined && { message }),
      ...(prompt !== undefined && { prompt }),
    };
  }

  private spilled(worksheet: Worksheet, row: number, column: number) {
    const model = this.grid.injector.get(FormulaDataModel);
    return model.getArrayFormulaCellData()[worksheet.getUnitId()]?.[worksheet.getSheetId()]?.[
      row
    ]?.[column];
  }

  private valueAt(worksheet: Worksheet, row: number, column: number): Value {
    const own = readValue(worksheet.getCellRaw(row, column));
    return own === null ? readValue(this.spilled(worksheet, row, column)) : own;
  }

  private messageAt(worksheet: Worksheet, row: number, column: number, error: string) {
    const model = this.grid.injector.get(FormulaDataModel);
    const around = spilledRanges(model, worksheet).find(
      (range) =>
        row >= range.startRow &&
        row <= range.endRow &&
        column >= range.startColumn &&
        column <= range.endColumn,
    );
    const anchor = { row: around?.startRow ?? row, column: around?.startColumn ?? column };
    const place = { sheetId: worksheet.getSheetId(), ...anchor };
    return this.grid.failures.messageOf(place, error, row - anchor.row, column - anchor.column);
  }

  private failed(): FailedCell[] {
    const model = this.grid.injector.get(FormulaDataModel);
    const found: FailedCell[] = [];
    for (const worksheet of workbookOf(this.grid)?.getSheets() ?? []) {
      const sheetId = worksheet.getSheetId();
      worksheet.getCellMatrix().forValue((row, column, data) => {
        if ((data?.f || data?.si) && isError(readValue(data))) found.push({ sheetId, row, column });
      });
      const spilled = model.getArrayFormulaCellData()[worksheet.getUnitId()]?.[sheetId];
      for (const range of spilledRanges(model, worksheet))
        for (let row = range.startRow; row <= range.endRow; row++)
          for (let column = range.startColumn; column <= range.endColumn; column++) {
            if (row === range.startRow && column === range.startColumn) continue;
            if (isError(readValue(spilled?.[row]?.[column]))) found.push({ sheetId, row, column });
          }
    }
    return found;
  }

  /** Behind the selected cell, in the order of sheets, rows and columns; from the end on to the first. */
  private goToNext(): void {
    const workbook = workbookOf(this.grid);
    const sheets = workbook?.getSheets().map((sheet) => sheet.getSheetId()) ?? [];
    const primary = this.grid.injector
      .get(SheetsSelectionsService)
      .getCurrentLastSelectionPrimaryCell();
    const rank = (cell: FailedCell) =>
      (sheets.indexOf(cell.sheetId) * 2 ** 21 + cell.row) * 2 ** 15 + cell.column;
    const here = rank({
      sheetId: workbook?.getActiveSheet()?.getSheetId() ?? "",
      row: primary?.actualRow ?? 0,
      column: primary?.actualColumn ?? -1,
    });
    const inOrder = this.failed().sort((one, other) => rank(one) - rank(other));
    const next = inOrder.find((cell) => rank(cell) > here) ?? inOrder[0];
    const book = this.grid.api.getActiveWorkbook();
    const sheet = next && book?.getSheetBySheetId(next.sheetId);
    if (!next || !book || !sheet) return;
    book.setActiveSheet(sheet);
    sheet.getRange(next.row, next.column).activate();
    sheet.scrollToCell(Math.max(0, next.row - 3), Math.max(0, next.column - 1));
  }

  /** The grid shows a general word on an error cell under the mouse; our functions know better. */
  private explainOnHover(): void {
    const alerts = this.grid.injector.get(CellAlertManagerService);
    const show = alerts.showAlert.bind(alerts);
    alerts.showAlert = (alert) => {
      const { row, col, subUnitId } = alert.location;
      const worksheet = workbookOf(this.grid)?.getSheetBySheetId(subUnitId);
      const value = worksheet && this.valueAt(worksheet, row, col);
      const error = value && isError(value) ? value.error : undefined;
      const message = worksheet && error && this.messageAt(worksheet, row, col, error);
      show(message ? { ...alert, title: error, message, width: 320 } : alert);
    };
  }
}

function parts({ address, value, message, prompt }: SeenCell): HTMLElement[] {
  const part = (kind: string, text: string) => {
    const span = document.createElement("span");
    span.className = kind;
    span.textContent = text;
    return span;
  };
  const said = message ?? (isError(value) ? undefined : prompt);
  return [
    part("address", address),
    part("value", valueText(value)),
    ...(said === undefined ? [] : [part("message", said)]),
  ];
}

function valueText(value: Value): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number") return String(Number(value.toPrecision(12)));
  return isError(value) ? value.error : value;
}
