import { numfmt } from "@univerjs/core";

const MOST_DIGITS = 12;

/** A number in its format, as the grid itself would write it. */
export function numberText(value: number, format: string | undefined): string {
  const general = String(Number(value.toPrecision(MOST_DIGITS)));
  if (format === undefined || /^general$/i.test(format)) return general;
  return numfmt.isValidFormat(format) ? numfmt.format(format, value) : general;
}
