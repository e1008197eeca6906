/** Cells with a comment have a mark; its text shows under the mouse, and below the grid while the cell is selected. */
import { InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { CellAlertManagerService, CellAlertType, HoverManagerService } from "@univerjs/sheets-ui";
import type { CellPlace } from "../../engine/cell-place";
import type { CellComment } from "../../workbook/book";
import type { Grid } from "../grid/grid";

export type CommentAt = (place: CellPlace) => CellComment | undefined;

/** The grid turns it into a lighter one on its dark ground. */
const MARK = { color: "#9c1c12", size: 7 };
const ALERT = "dosewright.comment";

/** Who said it, and what: texts of other programs often begin with the name. */
export function commentWords({ author, text }: CellComment): { by: string; text: string } {
  const own = author !== undefined && text.startsWith(`${author}:`);
  return {
    by: author === undefined ? "Comment" : `Comment by ${author}`,
    text: own ? text.slice(author.length + 1).trim() : text,
  };
}

/** What it says in the words of somebody else, with the name that it begins with. */
export const worded = (comment: CellComment, text: string): string =>
  comment.text.slice(0, comment.text.length - commentWords(comment).text.length) + text;

export function showComments({ injector }: Grid, commentAt: CommentAt): void {
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { subUnitId, row, col }, next) => {
      const comment = commentAt({ sheetId: subUnitId, row, column: col });
      return next(comment ? { ...cell, markers: { ...cell?.markers, tr: MARK } } : cell);
    },
  });
  const alerts = injector.get(CellAlertManagerService);
  injector.get(HoverManagerService).currentCell$.subscribe((hovered) => {
    const { location } = hovered ?? {};
    const place = location && {
      sheetId: location.subUnitId,
      row: location.row,
      column: location.col,
    };
    const comment = place && commentAt(place);
    if (!location || !comment) return alerts.removeAlert(ALERT);
    const { by, text } = commentWords(comment);
    const type = CellAlertType.INFO;
    alerts.showAlert({
      type,
      title: by,
      message: text,
      location,
      width: 320,
      height: 74,
      key: ALERT,
    });
  });
}
