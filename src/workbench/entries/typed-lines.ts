/**
 * A text in several lines. The grid keeps one that is typed as a document, its lines parted by what no file knows
 * for a break and CHAR(10) does not find: here it is a text as any other, which its cell shows in lines. And it
 * is opened in its lines, too: the grid would put them into one.
 */
import {
  BuildTextUtils,
  CellValueType,
  type ICellData,
  type ICellDataForSheetInterceptor,
  type IDocumentData,
  type Nullable,
  WrapStrategy,
} from "@univerjs/core";
import { AFTER_CELL_EDIT, BEFORE_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";
import { plainValue } from "../../engine/arguments";
import type { Grid } from "../grid/grid";

/** Before anything else looks at what was typed. */
const FIRST = 200;

export function keepLines({ injector }: Grid): void {
  const { writeCellInterceptor } = injector.get(SheetInterceptorService);
  writeCellInterceptor.intercept(BEFORE_CELL_EDIT, {
    priority: FIRST,
    handler: (cell, _, next) => next(inLines(cell)),
  });
  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (entry, { workbook }, next) => {
      const text = entry && !entry.f ? textOf(entry) : undefined;
      if (!text?.includes("\n")) return next(entry);
      const look = { ...workbook.getStyles().getStyleByCell(entry), tb: WrapStrategy.WRAP };
      return next({ ...entry, p: null, v: text, t: CellValueType.STRING, s: look });
    },
  });
}

/** The grid gives what was typed as a document, or as a text with its line breaks. */
function textOf({ p, v }: ICellData): string | undefined {
  if (p?.body?.textRuns?.length) return undefined;
  return String(v ?? plainValue({ p }) ?? "").replaceAll("\r", "\n");
}

type Cell = Nullable<ICellDataForSheetInterceptor>;

function inLines(cell: Cell): Cell {
  if (!cell || cell.f || typeof cell.v !== "string" || !cell.v.includes("\n")) return cell;
  const body = BuildTextUtils.transform.fromPlainText(cell.v);
  const p: IDocumentData = {
    id: "",
    body: { ...body, dataStream: `${body.dataStream}\r\n` },
    documentStyle: {},
  };
  return { ...cell, v: null, p };
}
