import { addressOf, areaAddress } from "../address";
import { shiftedFormula } from "../formula/shared";
import { Place } from "../read/place";
import { readXml, type XmlElement, type XmlHandlers } from "../xml";
import { attributesXml, escapeFormula } from "../xml-text";
import { Bounds } from "./bounds";
import {
  type CellInFile,
  type CellWriting,
  cellXml,
  type FormulaInFile,
  lookedAttributes,
} from "./cell-xml";
import type { CellEdit, SheetEdits } from "./edits";
import type { LineEdit } from "./layout-edits";
import { rowAttributes } from "./lines";
import { type Replacement, splice } from "./splice";

interface OpenCell {
  readonly element: XmlElement;
  readonly row: number;
  readonly column: number;
  formula?: { readonly element: XmlElement; text: string; end: number };
}

interface OpenRow {
  readonly element: XmlElement;
  readonly row: number;
  /** Edits of cells that the row does not hold yet, from left to right. */
  readonly missing: [number, CellEdit][];
  /** Whether a cell is put in, so that the row's own note of its columns no longer holds. */
  grows: boolean;
}

type RowEdits = ReadonlyMap<number, LineEdit>;

const tag = (
  { prefix, name }: XmlElement,
  attributes: Readonly<Record<string, string | undefined>>,
) => `<${prefix}${name}${attributesXml(attributes)}`;

/** Walks over a sheet and gathers what to replace; nothing that is not named in the edits is touched. */
class SheetPatch implements XmlHandlers {
  readonly replacements: Replacement[] = [];
  /** Cells that lost their formula or were left empty: a calculation chain may still name them. */
  readonly emptied: string[] = [];
  readonly #place = new Place();
  readonly #bounds = new Bounds();
  readonly #missingRows: number[];
  /** Shared formulas whose first cell got another: the others now spell it out. */
  readonly #dissolved = new Map<string, (row: number, column: number) => string>();
  #row: OpenRow | undefined;
  #cell: OpenCell | undefined;
  #dimension: XmlElement | undefined;
  #sheetData: XmlElement | undefined;
  #inFormula = false;
  /** Whether the sheet holds more or fewer cells than before. */
  #resized = false;

  constructor(
    private readonly xml: string,
    private readonly edits: SheetEdits,
    private readonly writing: CellWriting,
    private readonly rows: RowEdits,
  ) {
    this.#missingRows = [...new Set([...edits.keys(), ...rows.keys()])].sort((a, b) => a - b);
  }

  open(element: XmlElement): void {
    const { name } = element;
    if (name === "dimension") this.#dimension = element;
    else if (name === "sheetData") this.#sheetData = element;
    else if (name === "row") this.#openRow(element);
    else if (name === "c") this.#openCell(element);
    else if (name === "f" && this.#cell) {
      this.#cell.formula = { element, text: "", end: element.innerStart };
      this.#inFormula = true;
    }
  }

  text(run: string): void {
    if (this.#inFormula && this.#cell?.formula) this.#cell.formula.text += run;
  }

  close(name: string, end: number, innerEnd: number): void {
    if (name === "f" && this.#cell?.formula) {
      this.#cell.formula.end = end;
      this.#inFormula = false;
    } else if (name === "c") this.#closeCell(end);
    else if (name === "row") this.#closeRow(innerEnd);
    else if (name === "sheetData") this.#closeSheetData(innerEnd);
  }

  #openRow(element: XmlElement): void {
    const row = this.#place.enterRow(element.attributes.r);
    this.#insertRowsBefore(row, element.start, element.prefix);
    if (this.#missingRows[0] === row) this.#missingRows.shift();
    const edits = this.edits.get(row);
    const missing = edits ? [...edits].sort(([a], [b]) => a - b) : [];
    this.#row = { element, row, missing, grows: false };
  }

  #openCell(element: XmlElement): void {
    const column = this.#place.enterCell(element.attributes.r);
    if (!this.#row) return;
    this.#insertCellsBefore(this.#row, column, element.start);
    this.#cell = { element, row: this.#row.row, column };
  }

  #closeCell(end: number): void {
    const cell = this.#cell;
    this.#cell = undefined;
    if (!cell || !this.#row) return;
    const { row, column } = cell;
    const { start, prefix, attributes } = cell.element;
    const edit = this.edits.get(row)?.get(column);
    if (this.#row.missing[0]?.[0] === column) this.#row.missing.shift();
    const spelledOut = this.#spelledOut(cell);
    // A cell that holds nothing but a look goes with it.
    if (!edit || (edit.value === undefined && !cell.element.selfClosing)) {
      this.#bounds.add(row, column);
      if (edit) this.#look(cell.element, edit);
      if (spelledOut && cell.formula)
        this.replacements.push({
          start: cell.formula.element.start,
          end: cell.formula.end,
          text: spelledOut.opening + spelledOut.rest,
        });
      return;
    }
    if (edit.formula !== undefined) this.#dissolve(cell);
    const formula = spelledOut ?? this.#formulaInFile(cell);
    const inFile: CellInFile = { row, column, prefix, attributes, ...(formula ? { formula } : {}) };
    const text = cellXml(inFile, edit, this.writing);
    const emptied = edit.formula === null || (!formula && edit.value === null);
    if (emptied) this.emptied.push(addressOf(row, column));
    if (text === "") this.#resized = true;
    else this.#bounds.add(row, column);
    this.replacements.push({ start, end, text });
  }

  /** All that the cell holds stays to the letter. */
  #look(element: XmlElement, edit: CellEdit): void {
    const { start, innerStart, selfClosing } = element;
    const opening = tag(element, lookedAttributes(element, edit, this.writing));
    this.replacements.push({
      start,
      end: innerStart,
      text: `${opening}${selfClosing ? "/>" : ">"}`,
    });
  }

  #formulaInFile({ formula }: OpenCell): FormulaInFile | undefined {
    if (!formula) return undefined;
    const { start, innerStart, attributes } = formula.element;
    const opening = this.xml.slice(start, innerStart);
    return { attributes, opening, rest: this.xml.slice(innerStart, formula.end) };
  }

  /** The formula of a cell that shared one whose first cell got another. */
  #spelledOut({ element, row, column, formula }: OpenCell): FormulaInFile | undefined {
    const { t, si } = formula?.element.attributes ?? {};
    if (t !== "shared" || formula?.text !== "") return undefined;
    const text = this.#dissolved.get(si ?? "")?.(row, column);
    if (text === undefined) return undefined;
    const tag = `${element.prefix}f`;
    return { attributes: {}, opening: `<${tag}>`, rest: `${escapeFormula(text)}</${tag}>` };
  }

  #dissolve({ row, column, formula }: OpenCell): void {
    const { t, si } = formula?.element.attributes ?? {};
    if (t !== "shared" || si === undefined || !formula || formula.text === "") return;
    const shifted = shiftedFormula(formula.text);
    this.#dissolved.set(si, (toRow, toColumn) => shifted(toRow - row, toColumn - column));
  }

  #closeRow(innerEnd: number): void {
    const row = this.#row;
    this.#row = undefined;
    if (!row) return;
    const { element } = row;
    const cells = this.#cellsBefore(row, Number.POSITIVE_INFINITY);
    const opening = this.xml.slice(element.start, element.innerStart);
    const edited = this.#rowOpening(row, opening);
    const open = row.grows ? edited.replace(/\sspans\s*=\s*(?:"[^"]*"|'[^']*')/, "") : edited;
    if (element.selfClosing && cells !== "") {
      const text = `${open.replace(/\/>$/, ">")}${cells}</${element.prefix}row>`;
      this.replacements.push({ start: element.start, end: element.innerStart, text });
      return;
    }
    if (open !== opening)
      this.replacements.push({ start: element.start, end: element.innerStart, text: open });
    if (cells !== "") this.replacements.push({ start: innerEnd, end: innerEnd, text: cells });
  }

  #rowOpening({ row, element }: OpenRow, opening: string): string {
    const edit = this.rows.get(row);
    if (!edit) return opening;
    const end = element.selfClosing ? "/>" : ">";
    return `${tag(element, rowAttributes(element.attributes, edit))}${end}`;
  }

  #closeSheetData(innerEnd: number): void {
    const sheetData = this.#sheetData as XmlElement;
    if (!sheetData.selfClosing) {
      this.#insertRowsBefore(Number.POSITIVE_INFINITY, innerEnd, sheetData.prefix);
      return;
    }
    const rows = this.#rowsBefore(Number.POSITIVE_INFINITY, sheetData.prefix);
    if (rows === "") return;
    const { start, innerStart, prefix } = sheetData;
    const text = `<${prefix}sheetData>${rows}</${prefix}sheetData>`;
    this.replacements.push({ start, end: innerStart, text });
  }

  #insertCellsBefore(row: OpenRow, column: number, at: number): void {
    const text = this.#cellsBefore(row, column);
    if (text !== "") this.replacements.push({ start: at, end: at, text });
  }

  #cellsBefore(row: OpenRow, column: number): string {
    let text = "";
    for (let next = row.missing[0]; next && next[0] < column; next = row.missing[0]) {
      row.missing.shift();
      text += this.#newCell(row.row, next[0], next[1], row.element.prefix);
    }
    if (text !== "") row.grows = true;
    return text;
  }

  #newCell(row: number, column: number, edit: CellEdit, prefix: string): string {
    const text = cellXml({ row, column, prefix, attributes: {} }, edit, this.writing);
    if (text === "") return text;
    this.#resized = true;
    this.#bounds.add(row, column);
    return text;
  }

  #insertRowsBefore(row: number, at: number, prefix: string): void {
    const text = this.#rowsBefore(row, prefix);
    if (text !== "") this.replacements.push({ start: at, end: at, text });
  }

  #rowsBefore(row: number, prefix: string): string {
    let text = "";
    for (let next = this.#missingRows[0]; next !== undefined && next < row; ) {
      this.#missingRows.shift();
      const edits = [...(this.edits.get(next) ?? [])].sort(([a], [b]) => a - b);
      const cells = edits.map(([column, edit]) =>
        this.#newCell(next as number, column, edit, prefix),
      );
      const inner = cells.join("");
      const line = this.rows.get(next);
      const attributes = attributesXml(rowAttributes({ r: `${next + 1}` }, line ?? {}));
      if (inner !== "" || line) text += `<${prefix}row${attributes}>${inner}</${prefix}row>`;
      next = this.#missingRows[0];
    }
    return text;
  }

  /** The sheet's own note of the area that it uses. */
  noteDimension(): void {
    const dimension = this.#dimension;
    if (!dimension || !this.#resized) return;
    const ref = areaAddress(this.#bounds.area());
    if (dimension.attributes.ref === ref) return;
    const { start, innerStart } = dimension;
    const text = this.xml
      .slice(start, innerStart)
      .replace(/(\sref\s*=\s*)(?:"[^"]*"|'[^']*')/, `$1"${ref}"`);
    this.replacements.push({ start, end: innerStart, text });
  }
}

/** A sheet's XML after the edits, and the cells that lost formula or value. */
export function patchSheet(
  path: string,
  xml: string,
  edits: SheetEdits,
  writing: CellWriting,
  rows: RowEdits = new Map(),
): { readonly xml: string; readonly emptied: readonly string[] } {
  const patch = new SheetPatch(xml, edits, writing, rows);
  readXml(path, xml, patch);
  patch.noteDimension();
  return { xml: splice(xml, patch.replacements), emptied: patch.emptied };
}
