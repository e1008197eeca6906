/**
 * Parts of number formats that the grid's package leaves out: the one for text; one that shows nothing, so that
 * zeros or negative numbers are not seen; and the colour of a number that is not negative.
 */
import {
  type ICellDataForSheetInterceptor as Cell,
  CellValueType,
  InterceptorEffectEnum,
  isDefaultFormat,
  isTextFormat,
  numfmt,
  ThemeService,
} from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { isErrorText } from "../../engine/arguments";
import type { Grid } from "../grid/grid";

/** Behind what brings spilled values into cells and gives them formats, before the package writes them. */
const BETWEEN = 40;

/** What has to be shown otherwise than the package does it. */
export function shownBySection(
  pattern: string,
  { v, t, interceptorStyle }: Pick<Cell, "v" | "t" | "interceptorStyle">,
  colourOf: (name: string) => string,
): Partial<Cell> {
  if (isDefaultFormat(pattern) || isTextFormat(pattern) || !numfmt.isValidFormat(pattern))
    return {};
  // The package would take a text of digits for a number.
  if (typeof v === "string")
    return isErrorText(v) || t === CellValueType.BOOLEAN
      ? {}
      : { v: numfmt.format(pattern, v), t: CellValueType.FORCE_STRING };
  if (typeof v !== "number" || t === CellValueType.BOOLEAN || isPlain(pattern)) return {};
  if (numfmt.format(pattern, v) === "") return { v: "", t: CellValueType.FORCE_STRING };
  const colour = v >= 0 ? numfmt.formatColor(pattern, v) : undefined;
  if (!colour) return {};
  return { interceptorStyle: { ...interceptorStyle, cl: { rgb: colourOf(String(colour)) } } };
}

/** Without parts and colours, and with a digit or a day that always shows. */
const isPlain = (pattern: string) => !/[;[]/.test(pattern) && /[0?dmyhs]/i.test(pattern);

export function showSections({ injector }: Grid): void {
  const theme = injector.get(ThemeService);
  const colourOf = (name: string) => theme.getColorFromTheme(`${name}.500`) ?? name;
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: BETWEEN,
    effect: InterceptorEffectEnum.Value | InterceptorEffectEnum.Style,
    handler: (cell, { workbook }, next) => {
      const pattern = cell && workbook.getStyles().getStyleByCell(cell)?.n?.pattern;
      if (!cell || !pattern) return next(cell);
      const shown = shownBySection(pattern, cell, colourOf);
      return next(Object.keys(shown).length > 0 ? { ...cell, ...shown } : cell);
    },
  });
}
