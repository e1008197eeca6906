/**
 * A number that is wider than its cell: cut off it would be read as another number. One that came without a
 * format is rounded until it fits, as a spreadsheet does; any other is shown as hashes. But the widths of
 * columns are counted in digits of a narrow type: where that of the grid is wider, it is set as narrow.
 */
import { CellValueType, type Worksheet } from "@univerjs/core";
import { FontCache, getFontStyleString, Text } from "@univerjs/engine-render";
import { DIGIT } from "../../workbook/column-width";

export interface Fit {
  readonly text: string;
  readonly width: number;
  widthOf(text: string): number;
  /** How narrow the type may be set, as a part of its own width. */
  readonly narrowest: number;
}

export interface Fitted {
  readonly text: string;
  /** As a part of its own width. */
  readonly narrowed: number;
}

/** More digits, or more decimals, than a format asks for are those of a number as it was computed or typed. */
const MOST_DIGITS = 8;
const MOST_DECIMALS = 4;

export function fitted({ text, width, widthOf, narrowest }: Fit): Fitted {
  const own = widthOf(text);
  if (own <= width) return { text, narrowed: 1 };
  if (/^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i.test(text)) {
    const digits = text.replace(/e.*$/i, "").replaceAll(/\D/g, "").replace(/^0+/, "").length;
    const whole = Math.abs(Math.trunc(Number(text))).toString().length;
    const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
    if (digits > MOST_DIGITS || decimals > MOST_DECIMALS)
      for (let kept = digits - 1; kept >= Math.max(whole, 2); kept--) {
        const rounded = String(Number(Number(text).toPrecision(kept)));
        if (widthOf(rounded) <= width) return { text: rounded, narrowed: 1 };
      }
  }
  if (own * narrowest <= width) return { text, narrowed: width / own };
  return { text: "#".repeat(Math.max(1, Math.floor(width / widthOf("#")))), narrowed: 1 };
}

/** The usual size of the type in which the digits of columns are counted, in pixels. */
const COUNTED_SIZE = (11 * 4) / 3;

/** The size of a type in pixels: "italic bold 11pt Arial". */
function sizeOf(fontStyle: string): number {
  const [, size, unit] = /([\d.]+)(p[tx])/.exec(fontStyle) ?? [];
  return (Number(size ?? 11) * (unit === "px" ? 3 : 4)) / 3;
}

function fitInto(text: string, width: number, fontStyle: string): Fitted {
  const widthOf = (shown: string) => FontCache.getMeasureText(shown, fontStyle).width;
  const counted = (DIGIT * sizeOf(fontStyle)) / COUNTED_SIZE;
  const narrowest = Math.min(1, counted / widthOf("0"));
  return fitted({ text, width, widthOf, narrowest });
}

/** On either side of what a cell shows. */
const PADDING = 2;

/** A number without a format as its cell shows it; as a whole where the cell is too narrow for any of it. */
export function generalText(worksheet: Worksheet, row: number, column: number, value: number) {
  const { startColumn, endColumn } = worksheet.getMergedCell(row, column) ?? {
    startColumn: column,
    endColumn: column,
  };
  let width = -2 * PADDING;
  for (let its = startColumn; its <= endColumn; its++) width += worksheet.getColumnWidth(its);
  const style = worksheet.getComposedCellStyle(row, column);
  const { text } = fitInto(String(value), width, getFontStyleString(style).fontString);
  return text.startsWith("#") ? String(value) : text;
}

/** The grid draws every text of a cell here, and starts numbers that are too wide at their left. */
export function fitNumbers(): void {
  const draw = Text.drawWith.bind(Text);
  Text.drawWith = (context, props, skeleton) => {
    const { text, width, left = 0, fontStyle = "", warp, cellValueType } = props;
    const isNumber = cellValueType === CellValueType.NUMBER && !warp && !skeleton;
    if (!isNumber) return draw(context, props, skeleton);
    const fit = fitInto(text, width, fontStyle);
    if (fit.narrowed === 1) return draw(context, { ...props, text: fit.text });
    context.save();
    context.transform(fit.narrowed, 0, 0, 1, left, 0);
    const height = draw(context, { ...props, left: 0, width: width / fit.narrowed });
    context.restore();
    return height;
  };
}
