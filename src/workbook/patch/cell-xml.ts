import { addressOf, areaAddress } from "../address";
import { isError, type Value } from "../book";
import { type FunctionNames, storedFormula } from "../formula/stored-form";
import { styleIndex } from "../read/styles";
import { attributesXml, escapeFormula, escapeText } from "../xml-text";
import type { CellEdit, LookOf } from "./edits";

/**
 * Errors that a file may hold by name (ECMA-376 part 1, 18.17.3). The younger ones (#SPILL!, #CALC!…) stand
 * in it as #VALUE! with a rich value in parts of their own beside, which are not written: a name that is not
 * on the list makes the file a damaged one for a strict reader, and the spreadsheet computes the true error
 * anew when it opens the file. The report of a recalculation names it.
 */
const fileErrors: ReadonlySet<string> = new Set([
  "#DIV/0!",
  "#N/A",
  "#NAME?",
  "#NULL!",
  "#NUM!",
  "#REF!",
  "#VALUE!",
  "#GETTING_DATA",
]);

export const fileError = (error: string): string => (fileErrors.has(error) ? error : "#VALUE!");

/** All digits that tell the number from its neighbours: what is read back is the same number. */
export function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new Error("A cell cannot hold a number without bounds.");
  return `${value === 0 ? 0 : value}`.replace("e+", "E").replace("e", "E");
}

/** The type of a value (attribute t) and its element. */
function valueXml(value: Value, prefix: string): { type: string | undefined; xml: string } {
  const element = (text: string) => `<${prefix}v>${text}</${prefix}v>`;
  if (value === null) return { type: undefined, xml: "" };
  if (typeof value === "number") return { type: undefined, xml: element(numberText(value)) };
  if (typeof value === "boolean") return { type: "b", xml: element(value ? "1" : "0") };
  if (isError(value)) return { type: "e", xml: element(fileError(value.error)) };
  // As the text of a formula: the list of shared texts stays untouched.
  return { type: "str", xml: element(escapeText(value)) };
}

export type Attributes = Readonly<Record<string, string>>;

/** A formula element as the file has it now. */
export interface FormulaInFile {
  readonly attributes: Attributes;
  readonly opening: string;
  /** What follows the opening tag: the text and the closing tag. */
  readonly rest: string;
}

/** The cell as the file has it now. */
export interface CellInFile {
  readonly row: number;
  readonly column: number;
  readonly prefix: string;
  readonly attributes: Attributes;
  readonly formula?: FormulaInFile;
}

export interface CellWriting {
  readonly names: FunctionNames;
  /** The number that marks a dynamic array in this workbook; undefined where the workbook has none. */
  readonly dynamicMark: number | undefined;
  /** The number of the look that a cell has after an edit, by the one that it has now. */
  readonly lookOf?: LookOf;
}

function reach({ row, column }: CellInFile, { spill }: CellEdit): string {
  return areaAddress({ row, column, rows: spill?.rows ?? 1, columns: spill?.columns ?? 1 });
}

/** The formula element after the edit, and whether the cell is marked as a dynamic array. */
function formulaXml(cell: CellInFile, edit: CellEdit, { names, dynamicMark }: CellWriting) {
  const { prefix } = cell;
  if (edit.formula === null) return { xml: "", mark: undefined };
  if (edit.formula === undefined) {
    const { formula } = cell;
    const mark = cell.attributes.cm;
    if (!formula) return { xml: "", mark };
    const { attributes, opening, rest } = formula;
    if (attributes.t !== "array" || !edit.spill) return { xml: opening + rest, mark };
    const ref = attributesXml({ ...attributes, ref: reach(cell, edit) });
    return { xml: `<${prefix}f${ref}${opening.endsWith("/>") ? "/>" : ">"}${rest}`, mark };
  }
  const text = escapeFormula(storedFormula(edit.formula, names));
  const isArray = edit.spill !== undefined && (edit.fixed || dynamicMark !== undefined);
  if (!isArray) return { xml: `<${prefix}f>${text}</${prefix}f>`, mark: undefined };
  return {
    xml: `<${prefix}f t="array" ref="${reach(cell, edit)}">${text}</${prefix}f>`,
    mark: edit.fixed ? undefined : `${dynamicMark}`,
  };
}

/** Its attributes with the look that it has after the edit. */
export function lookedAttributes(
  { attributes }: Pick<CellInFile, "attributes">,
  { style, look }: CellEdit,
  { lookOf }: CellWriting,
): Attributes {
  const { s, ...kept } = attributes;
  const index =
    look && lookOf
      ? `${lookOf(Number(s ?? 0), look)}`
      : style === undefined
        ? s
        : style === null
          ? "0"
          : styleIndex(style);
  return index === undefined || (index === "0" && s !== "0") ? kept : { ...attributes, s: index };
}

/** The cell after the edit; "" where nothing is left of it, not even a format. */
export function cellXml(cell: CellInFile, edit: CellEdit, writing: CellWriting): string {
  const { prefix } = cell;
  // vm points to a value of another kind (a picture, a rich error), which the new value is not.
  const { r: _r, t: _t, vm: _vm, cm: _cm, ...kept } = lookedAttributes(cell, edit, writing);
  const formula = formulaXml(cell, edit, writing);
  const value = valueXml(edit.value ?? null, prefix);
  if (formula.xml === "" && value.xml === "" && kept.s === undefined) return "";
  const attributes = attributesXml({
    r: addressOf(cell.row, cell.column),
    ...kept,
    ...(value.type === undefined ? {} : { t: value.type }),
    ...(formula.mark === undefined ? {} : { cm: formula.mark }),
  });
  const inner = formula.xml + value.xml;
  return inner === ""
    ? `<${prefix}c${attributes}/>`
    : `<${prefix}c${attributes}>${inner}</${prefix}c>`;
}
