/** A funnel on the head of each column that is filtered; a press on it opens what filters it. */
import {
  HorizontalAlign,
  type ICellCustomRender,
  type ICellRenderContext,
  InterceptorEffectEnum,
  type Worksheet,
} from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { isActive } from "../../workbook/filter";
import type { Grid } from "../grid/grid";
import type { Filters } from "./filters";

const SIZE = 11;
const MARGIN = 4;
/** On white; the grid inverts what it draws on black. */
const INK = "#0b6e6e";
const GROUND = "#e7f3f2";

export function markHeads(
  { injector }: Grid,
  filters: Filters,
  open: (row: number, column: number) => void,
): void {
  const mark: ICellCustomRender = {
    zIndex: 10,
    drawWith: (context, info) => {
      const { left, top } = placeIn(info);
      drawFunnel(context, left, top);
    },
    isHit: ({ x, y }, info) => {
      const { left, top } = placeIn(info);
      const [across, down] = [x - left + MARGIN, y - top + MARGIN];
      return across > 0 && down > 0 && across < SIZE + 2 * MARGIN && down < SIZE + 2 * MARGIN;
    },
    onPointerDown: ({ row, col }) => open(row, col),
  };
  const isHead = (sheet: Worksheet, row: number, column: number) =>
    filters
      .known(sheet)
      .some(
        (filter) =>
          isActive(filter) &&
          filter.area.row === row &&
          filter.columns.some((one) => filter.area.column + one.column === column),
      );
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { worksheet, row, col }, next) => {
      if (!isHead(worksheet, row, col)) return next(cell);
      return next({ ...cell, customRender: [...(cell?.customRender ?? []), mark] });
    },
  });
}

/** Below, at the side where the words of the head do not begin. */
function placeIn({ primaryWithCoord: { mergeInfo }, style }: ICellRenderContext) {
  const { startX, endX, endY } = mergeInfo;
  const isRight = style?.ht !== HorizontalAlign.RIGHT;
  return {
    left: isRight ? endX - SIZE - MARGIN : startX + MARGIN,
    top: endY - SIZE - MARGIN,
  };
}

function drawFunnel(context: CanvasRenderingContext2D, left: number, top: number): void {
  context.save();
  context.fillStyle = GROUND;
  context.fillRect(left - 2, top - 2, SIZE + 4, SIZE + 4);
  context.fillStyle = INK;
  context.beginPath();
  context.moveTo(left, top);
  context.lineTo(left + SIZE, top);
  context.lineTo(left + SIZE * 0.6, top + SIZE * 0.5);
  context.lineTo(left + SIZE * 0.6, top + SIZE);
  context.lineTo(left + SIZE * 0.4, top + SIZE * 0.85);
  context.lineTo(left + SIZE * 0.4, top + SIZE * 0.5);
  context.closePath();
  context.fill();
  context.restore();
}
