import { addressOf } from "../../../src/workbook/address";
import { rawWorkbook } from "../../workbook/raw-workbook";

export interface TableFile {
  /** The heads, and row by row what stands below them; a formula begins with "=". */
  readonly rows: readonly (readonly (number | string)[])[];
  /** Of the rows as they are numbered on the sheet. */
  readonly hidden?: readonly number[];
  /** The last of the rows is one of totals. */
  readonly totals?: boolean;
  /** What follows the cells: conditional formats and entry rules. */
  readonly rules?: string;
  readonly styles?: string;
}

const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/table";
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** A file of one sheet, S, with one table, Runs, from its first cell on. */
export function tableFile({
  rows,
  hidden = [],
  totals,
  rules = "",
  styles,
}: TableFile): Uint8Array {
  const [heads = []] = rows;
  const columns = heads.map((head, at) => `<tableColumn id="${at + 1}" name="${head}"/>`).join("");
  const last = addressOf(rows.length - 1, heads.length - 1);
  return rawWorkbook({
    sheets: {
      S: `${cellsXml(rows, hidden)}${rules}<tableParts count="1"><tablePart r:id="rId1"/></tableParts>`,
    },
    ...(styles !== undefined && { styles }),
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${relation}" Target="../tables/table1.xml"/></Relationships>`,
      "xl/tables/table1.xml": `<table xmlns="${main}" id="1" name="Runs" displayName="Runs" ref="A1:${last}"${totals ? ' totalsRowCount="1"' : ""}><tableColumns count="${heads.length}">${columns}</tableColumns></table>`,
    },
  });
}

/** The cells of a sheet in a file. */
export function cellsXml(rows: TableFile["rows"], hidden: readonly number[] = []): string {
  const data = rows.map((cells, row) => {
    const inner = cells.map((holds, column) => cellXml(addressOf(row, column), holds)).join("");
    const mark = hidden.includes(row + 1) ? ' hidden="1"' : "";
    return `<row r="${row + 1}"${mark}>${inner}</row>`;
  });
  return `<sheetData>${data.join("")}</sheetData>`;
}

function cellXml(address: string, holds: number | string): string {
  if (typeof holds === "number") return `<c r="${address}"><v>${holds}</v></c>`;
  if (holds.startsWith("=")) return `<c r="${address}"><f>${holds.slice(1)}</f></c>`;
  return `<c r="${address}" t="str"><v>${holds}</v></c>`;
}
