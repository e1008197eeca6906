import type { Area, Sheet } from "../book";
import { charactersOfFile } from "../column-width";
import { sheetColumns } from "../formula/shared";
import { isOn } from "../xml";
import type { Allowance } from "./allowance";
import { areaIn } from "./place";
import { styleName } from "./styles";

type Attributes = Readonly<Record<string, string>>;

type SheetFrameParts = Pick<
  Sheet,
  | "columnWidths"
  | "rowHeights"
  | "rowStyles"
  | "columnStyles"
  | "hiddenRows"
  | "hiddenColumns"
  | "merged"
  | "frozen"
  | "gridlines"
>;

/** What stands around the cells of a sheet: widths, heights, frozen rows, merged cells. */
export class SheetFrame {
  readonly #widths: Record<number, number> = {};
  readonly #heights: Record<number, number> = {};
  readonly #rowStyles: Record<number, string> = {};
  readonly #columnStyles: Record<number, string> = {};
  readonly #hiddenRows: number[] = [];
  readonly #hiddenColumns: number[] = [];
  readonly #merged: Area[] = [];
  #frozen: Sheet["frozen"];
  #gridlines = true;
  #lastColumn = -1;

  constructor(
    private readonly allowance: Allowance,
    private readonly styleCount: number,
  ) {}

  row(row: number, { ht, customHeight, hidden, s, customFormat }: Attributes): void {
    const style = isOn(customFormat) ? this.#styleOf(s) : undefined;
    if (style !== undefined) this.#rowStyles[row] = style;
    if (isOn(hidden)) this.#hiddenRows.push(row);
    if (Number(ht) > 0 && isOn(customHeight)) this.#heights[row] = Number(ht);
  }

  open(name: string, attributes: Attributes): void {
    if (name === "col") this.#column(attributes);
    else if (name === "mergeCell") {
      this.allowance.mergedArea();
      this.#merged.push(areaIn(attributes.ref ?? ""));
    } else if (name === "sheetView") this.#gridlines = isOn(attributes.showGridLines ?? "1");
    else if (name === "pane" && (attributes.state ?? "split") !== "split")
      this.#frozen = {
        rows: Number(attributes.ySplit ?? 0),
        columns: Number(attributes.xSplit ?? 0),
      };
  }

  /** Columns come in ascending order; what does not is left out, so that none is named twice. */
  #column({ min, max, width, hidden, style }: Attributes): void {
    const first = Number(min) - 1;
    const last = Math.min(Number(max) - 1, sheetColumns - 1);
    if (!(first > this.#lastColumn) || !(last >= first)) return;
    this.#lastColumn = last;
    const itsStyle = this.#styleOf(style);
    for (let column = first; column <= last; column++) {
      if (isOn(hidden)) this.#hiddenColumns.push(column);
      // A column that was hidden by a width of nothing has the usual one once it is shown.
      if (Number(width) > 0) this.#widths[column] = charactersOfFile(Number(width));
      if (itsStyle !== undefined) this.#columnStyles[column] = itsStyle;
    }
  }

  #styleOf(index: string | undefined): string | undefined {
    const style = Number(index);
    return style > 0 && style < this.styleCount ? styleName(style) : undefined;
  }

  parts(): SheetFrameParts {
    return {
      columnWidths: this.#widths,
      rowHeights: this.#heights,
      ...(Object.keys(this.#rowStyles).length > 0 ? { rowStyles: this.#rowStyles } : {}),
      ...(Object.keys(this.#columnStyles).length > 0 ? { columnStyles: this.#columnStyles } : {}),
      ...(this.#hiddenRows.length > 0 ? { hiddenRows: this.#hiddenRows } : {}),
      ...(this.#hiddenColumns.length > 0 ? { hiddenColumns: this.#hiddenColumns } : {}),
      ...(this.#merged.length > 0 ? { merged: this.#merged } : {}),
      ...(this.#frozen ? { frozen: this.#frozen } : {}),
      ...(this.#gridlines ? {} : { gridlines: false }),
    };
  }
}
