/**
 * Numbers that are typed with a sign for per cent, or into a cell that shows one.
 *
 * A number that is typed into a cell with a percentage is one from 1 on, as in other spreadsheets (Microsoft
 * Knowledge Base, article 138821): 82 is 82 %. Below 1 it is the share itself, as everywhere here: 0.82 is 82 %.
 *
 * The grid multiplies by 0.01, which is no number of the machine: 82% would be 0.8200000000000001.
 */
import { CellValueType, type ICellData, isTextFormat, numfmt } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";
import type { Grid } from "../grid/grid";

/** Behind what gives an entry the look of its line, before the grid reads it. */
const BETWEEN = 80;

export function enterShares({ injector }: Grid): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: BETWEEN,
    handler: (entry, { workbook, worksheet, row, col }, next) => {
      if (!entry || entry.f || entry.p) return next(entry);
      const styles = workbook.getStyles();
      const { n } = {
        ...styles.getStyleByCell(worksheet.getCellRaw(row, col)),
        ...styles.getStyleByCell(entry),
      };
      const typed = String(entry.v ?? "");
      if (n && numfmt.isPercentFormat(n.pattern)) return next({ ...entry, v: asShare(typed) });
      const percentage = isTextFormat(n?.pattern) ? undefined : asPercentage(typed);
      return next({ ...entry, ...percentage });
    },
  });
}

const plainNumber = /^[-+(]?[\d.,]+\)?%?$/;

/** 0.82 for "82" and for "82%"; what is below 1, or no plain number, as it was typed. */
export function asShare(typed: string): number | string {
  const text = typed.trim();
  if (!plainNumber.test(text)) return typed;
  const { v } = numfmt.parseNumber(text.replace("%", "")) ?? {};
  if (typeof v !== "number" || (Math.abs(v) < 1 && !text.endsWith("%"))) return typed;
  const share = v / 100;
  // The grid would take an exponent for a format that was typed.
  return String(share).includes("e") ? typed : share;
}

/** What "82%" is, and the format that it asks for; undefined for what is no percentage. */
export function asPercentage(typed: string): Pick<ICellData, "v" | "t" | "s"> | undefined {
  const text = typed.trim();
  const { v, z } = (plainNumber.test(text) && numfmt.parseNumber(text)) || {};
  if (typeof v !== "number" || z === undefined || !numfmt.isPercentFormat(z)) return undefined;
  // As many digits as every number of the machine keeps.
  const share = Number(v.toPrecision(15));
  return { v: share, t: CellValueType.NUMBER, s: { n: { pattern: z } } };
}
