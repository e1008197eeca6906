import { addressOf } from "../../workbook/address";
import { holdsCell } from "../../workbook/areas";
import type { Cell } from "../../workbook/book";
import { layOut } from "../../workbook/layout/lay-out";
import { palette } from "../../workbook/layout/looks";
import type { PlannedSheet } from "../../workbook/layout/planned";
import type { ChartKind, Plan } from "../../workbook/plan";

type Styles = ReturnType<typeof layOut>["styles"];

/** A cell or a chart of a sheet as it lies in a small picture, in pixels of the sheet. */
export interface Box {
  readonly key: string;
  readonly kind: "value" | "formula" | "chart";
  readonly chart?: ChartKind;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly ink: string;
  readonly fill: string | undefined;
}

const CHARACTER = 7.2;
const USUAL_WIDTH = 8.43;
const USUAL_HEIGHT = 15;
const PIXELS_PER_POINT = 4 / 3;
/** As much of a sheet as a small picture can show. */
const USUAL_ROWS = 34;
const MOST_ROWS = 60;
const MOST_WIDTH = 1100;
const MOST_COLUMNS = 40;

/** The upper left part of a sheet as boxes, and how large it is. */
export function boxesOf(
  plan: Plan,
  sheet: PlannedSheet,
): { readonly boxes: readonly Box[]; readonly width: number; readonly height: number } {
  const { styles } = layOut(plan);
  const left = edges((column) => (sheet.columnWidths?.[column] ?? USUAL_WIDTH) * CHARACTER + 5);
  const top = edges((row) => (sheet.rowHeights?.[row] ?? USUAL_HEIGHT) * PIXELS_PER_POINT);
  const boxes: Box[] = [];
  let columns = 0;
  const rows = rowsShown(sheet, top);
  for (let row = 0; row < rows; row++) {
    const cells = sheet.cells[row] ?? {};
    for (const [name, cell] of Object.entries(cells)) {
      const column = Number(name);
      if (isCovered(sheet, row, column)) continue;
      columns = Math.max(columns, column + 1);
      const merged = sheet.merged?.find((area) => area.row === row && area.column === column);
      // A text runs on over the blank cells beside it.
      let end = column + (merged?.columns ?? 1);
      while (isPlainText(cell, styles) && end < MOST_COLUMNS && cells[end] === undefined) end++;
      boxes.push({
        ...lookOf(cell, styles),
        key: addressOf(row, column),
        x: left(column),
        y: top(row),
        width: left(end) - left(column),
        height: top(row + 1) - top(row),
      });
    }
  }
  for (const { row, column, width, height, title, chart } of sheet.charts) {
    boxes.push({
      key: `chart at ${addressOf(row, column)}`,
      kind: "chart",
      chart,
      x: left(column),
      y: top(row),
      width,
      height,
      text: title,
      size: 17,
      bold: true,
      ink: palette.ink,
      fill: undefined,
    });
  }
  const inside = boxes.filter(({ x, y }) => x < MOST_WIDTH && y < top(rows));
  const charts = inside.filter(({ kind }) => kind === "chart");
  const right = Math.max(left(columns), ...charts.map(({ x, width }) => x + width));
  const bottom = Math.max(0, ...inside.map(({ y, height }) => y + height));
  return {
    boxes: inside,
    width: Math.min(MOST_WIDTH, right + 8),
    height: Math.min(top(rows), bottom + 8),
  };
}

/** So many rows that the first chart is in the picture, too. */
function rowsShown({ charts: [first] }: PlannedSheet, top: (row: number) => number): number {
  let rows = USUAL_ROWS;
  if (first === undefined) return rows;
  while (rows < MOST_ROWS && top(rows) < top(first.row) + first.height + 8) rows++;
  return rows;
}

/** Whether a cell lies under another one that was merged over it. */
const isCovered = ({ merged = [] }: PlannedSheet, row: number, column: number) =>
  merged.some(
    (area) => holdsCell(area, row, column) && (row !== area.row || column !== area.column),
  );

function isPlainText({ value, style }: Cell, styles: Styles): boolean {
  return typeof value === "string" && (style === undefined || styles[style]?.fill === undefined);
}

function lookOf(cell: Cell, styles: Styles) {
  const style = cell.style === undefined ? undefined : styles[cell.style];
  const value = cell.value;
  return {
    kind: cell.formula === undefined ? ("value" as const) : ("formula" as const),
    text: value === null || typeof value === "object" ? "" : String(value),
    size: (style?.size ?? 11) * PIXELS_PER_POINT,
    bold: style?.bold ?? false,
    ink: style?.ink ?? palette.ink,
    fill: style?.fill,
  };
}

/** Where each row or column begins. */
function edges(sizeOf: (i: number) => number): (i: number) => number {
  const starts = [0];
  return (i) => {
    while (starts.length <= i) {
      starts.push((starts.at(-1) as number) + sizeOf(starts.length - 1));
    }
    return starts[i] as number;
  };
}
