import { addressOf } from "../address";
import type { WorkbookPart } from "../read/workbook-part";
import { readXml } from "../xml";
import { escapeAttribute, escapeText } from "../xml-text";
import type { PackageEdits } from "./package-edits";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const contentType = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

/** A sheet of texts. They stand in it as texts of their own, so none of them is taken for a formula. */
function sheetXml(rows: readonly (readonly string[])[], widths: readonly number[]): string {
  const columns = widths
    .map((width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`)
    .join("");
  const cell = (text: string, row: number, column: number) =>
    `<c r="${addressOf(row, column)}" t="inlineStr"><is><t xml:space="preserve">${escapeText(text)}</t></is></c>`;
  const lines = rows.map((row, at) => {
    const cells = row.map((text, column) => cell(text, at, column));
    return `<row r="${at + 1}">${cells.join("")}</row>`;
  });
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${main}"><cols>${columns}</cols><sheetData>${lines.join("")}</sheetData></worksheet>`;
}

/** Adds a sheet of texts as the last of the workbook. */
export async function addTextSheet(
  edits: PackageEdits,
  part: WorkbookPart,
  name: string,
  rows: readonly (readonly string[])[],
  widths: readonly number[],
): Promise<void> {
  let highest = 0;
  let idAttribute: string | undefined;
  readXml(part.path, await edits.text(part.path), {
    open(element) {
      if (element.name !== "sheet") return;
      highest = Math.max(highest, Number(element.attributes.sheetId) || 0);
      idAttribute ??= Object.keys(element.attributes).find((key) => key.endsWith(":id"));
    },
  });
  const folder = part.path.slice(0, part.path.lastIndexOf("/") + 1);
  const path = edits.freePath(`${folder}worksheets/sheet`, ".xml");
  const text = sheetXml(rows, widths);
  const id = await edits.add(path, text, contentType, part.path, "worksheet");
  await edits.appendTo(part.path, "sheets", (prefix) => {
    const attributes = `name="${escapeAttribute(name)}" sheetId="${highest + 1}"`;
    const reference = idAttribute ? `${idAttribute}="${id}"` : `xmlns:r="${office}" r:id="${id}"`;
    return `<${prefix}sheet ${attributes} ${reference}/>`;
  });
}
