import type { WorkbookPackage } from "../package/open-package";
import { readShortXml } from "../xml";

/** The numbers (attribute cm, from 1) by which cells say that their array formula is a dynamic one. */
export async function readDynamicMarks(
  file: WorkbookPackage,
  path: string | undefined,
): Promise<ReadonlySet<number>> {
  const marks = new Set<number>();
  if (path === undefined || !file.has(path)) return marks;
  const types: string[] = [];
  let inCells = false;
  let mark = 0;
  readShortXml(path, await file.text(path), {
    open({ name, attributes }) {
      if (name === "metadataType") types.push(attributes.name ?? "");
      else if (name === "cellMetadata") inCells = true;
      else if (inCells && name === "bk") mark++;
      else if (inCells && name === "rc" && types[Number(attributes.t) - 1] === "XLDAPR")
        marks.add(mark);
    },
    close(name) {
      if (name === "cellMetadata") inCells = false;
    },
  });
  return marks;
}
