/**
 * A number that is wider than its cell: cut off it would be read as another number. One that came without a
 * format is rounded until it fits, as a spreadsheet does; any other is shown as hashes.
 */
import { CellValueType } from "@univerjs/core";
import { FontCache, Text } from "@univerjs/engine-render";

export interface Fit {
  readonly text: string;
  readonly width: number;
  widthOf(text: string): number;
}

/** More digits than a format asks for are those of a number as it was computed. */
const UNFORMATTED_DIGITS = 9;

export function fitted({ text, width, widthOf }: Fit): string {
  if (widthOf(text) <= width) return text;
  if (/^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i.test(text)) {
    const digits = text.replace(/e.*$/i, "").replaceAll(/\D/g, "").replace(/^0+/, "").length;
    const whole = Math.abs(Math.trunc(Number(text))).toString().length;
    if (digits >= UNFORMATTED_DIGITS)
      for (let kept = digits - 1; kept >= Math.max(whole, 2); kept--) {
        const rounded = String(Number(Number(text).toPrecision(kept)));
        if (widthOf(rounded) <= width) return rounded;
      }
  }
  return "#".repeat(Math.max(1, Math.floor(width / widthOf("#"))));
}

/** The grid draws every text of a cell here, and starts numbers that are too wide at their left. */
export function fitNumbers(): void {
  const draw = Text.drawWith.bind(Text);
  Text.drawWith = (context, props, skeleton) => {
    const { text, width, fontStyle = "", warp, cellValueType } = props;
    const isNumber = cellValueType === CellValueType.NUMBER && !warp && !skeleton;
    if (!isNumber) return draw(context, props, skeleton);
    const widthOf = (shown: string) => FontCache.getMeasureText(shown, fontStyle).width;
    return draw(context, { ...props, text: fitted({ text, width, widthOf }) });
  };
}
