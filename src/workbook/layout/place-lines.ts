import { parseAddress } from "../address";
import type { Value } from "../book";
import type { InputPart, ResultPart, TextPart } from "../plan";
import { allowIn } from "./allow";
import { type Draft, formulaCell, growRow, put, styleKey } from "./draft";
import type { Look } from "./looks";

/** A line or a paragraph of text. */
export function placeText(draft: Draft, part: TextPart): void {
  const { row, column } = parseAddress(part.at);
  const look = part.look ?? "body";
  const span = part.span ?? 1;
  const wraps = part.span !== undefined;
  const style = styleKey(draft, look, undefined, wraps);
  put(draft, row, column, { value: part.text, style });
  if (span > 1) draft.merged.push({ row, column, rows: 1, columns: span });
  for (let offset = 1; offset < span; offset++)
    put(draft, row, column + offset, { value: null, style });
  if (look === "title") draft.rowHeights[row] = 27;
  else if (look === "heading") draft.rowHeights[row] = 21;
  else if (wraps) growRow(draft, row, column, span, part.text);
}

/** Label, value, unit, note: the form that inputs and results share. */
export function placeLine(draft: Draft, part: InputPart | ResultPart): void {
  const { row, column } = parseAddress(part.at);
  const styled = (value: Value, look: Look) => ({ value, style: styleKey(draft, look) });
  put(draft, row, column, styled(part.label, "label"));
  // A number in per cent says itself what it is.
  const saysItself = part.unit === "fraction" && part.format?.includes("%");
  if (part.unit !== "" && !saysItself) put(draft, row, column + 2, styled(part.unit, "unit"));
  if (part.note !== undefined) put(draft, row, column + 3, styled(part.note, "note"));
  if (part.kind === "result") {
    const plain = part.format?.includes("@") ? "word" : "result";
    const style = styleKey(draft, part.headline ? "headline" : plain, part.format);
    put(draft, row, column + 1, formulaCell(draft, part.formula, style));
    return;
  }
  const style = styleKey(draft, "input", part.format);
  put(draft, row, column + 1, { value: part.value, style });
  allowIn(draft, { row, column: column + 1, rows: 1, columns: 1 }, part);
}
