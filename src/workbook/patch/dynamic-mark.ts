import { readDynamicMarks } from "../read/metadata";
import type { OpenedWorkbook } from "../read/read-workbook";
import type { WorkbookEdits } from "./edits";
import type { PackageEdits } from "./package-edits";

const contentType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const arrays = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";

/**
 * The one entry by which cells say that their array formula is a dynamic one.
 * Source: Microsoft, [MS-XLSX], schema http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray.
 */
const metadata =
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="${main}" xmlns:xda="${arrays}">` +
  '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>' +
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
  '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';

function wantsMark(cells: WorkbookEdits): boolean {
  for (const sheet of cells.values())
    for (const row of sheet.values())
      for (const { formula, spill, fixed } of row.values())
        if (typeof formula === "string" && spill && !fixed) return true;
  return false;
}

/**
 * The number by which dynamic arrays are marked in this workbook. One that has no metadata gets it
 * as soon as it is wanted; in one that has other metadata only, new formulas are plain ones.
 */
export async function dynamicMark(
  edits: PackageEdits,
  { file, part }: OpenedWorkbook,
  cells: WorkbookEdits,
): Promise<number | undefined> {
  const [mark] = await readDynamicMarks(file, part.paths.metadata);
  if (mark !== undefined || part.paths.metadata !== undefined || !wantsMark(cells)) return mark;
  const folder = part.path.slice(0, part.path.lastIndexOf("/") + 1);
  const path = file.has(`${folder}metadata.xml`)
    ? edits.freePath(`${folder}metadata`, ".xml")
    : `${folder}metadata.xml`;
  await edits.add(path, metadata, contentType, part.path, "sheetMetadata");
  return 1;
}
