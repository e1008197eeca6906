import type { Table } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import type { OpenedWorkbook } from "../read/read-workbook";
import { readXml } from "../xml";
import { dynamicMark } from "./dynamic-mark";
import type { WorkbookEdits } from "./edits";
import { PackageEdits } from "./package-edits";
import { patchSheet } from "./sheet-patch";
import { staleParts } from "./stale";
import { patchTableAreas } from "./table-areas";

export interface PatchedWorkbook {
  readonly bytes: Uint8Array;
  /** What in the file no longer agrees with its cells, one sentence each. */
  readonly stale: readonly string[];
}

/** The chain of calculation may name no cell without a formula. Without a chain a spreadsheet makes its own. */
async function mendCalculationChain(
  edits: PackageEdits,
  { file, part }: OpenedWorkbook,
  emptied: ReadonlySet<string>,
): Promise<void> {
  const path = part.paths.calculationChain;
  if (path === undefined || !file.has(path) || emptied.size === 0) return;
  let named = false;
  readXml(path, await file.text(path), {
    open({ name, attributes }) {
      if (name === "c" && emptied.has(attributes.r ?? "")) named = true;
    },
  });
  if (named) await edits.remove(path, part.path);
}

/** Puts edits of cells among others into a package that is going to be rewritten. */
export async function patchCells(
  edits: PackageEdits,
  opened: OpenedWorkbook,
  cells: WorkbookEdits,
  names: FunctionNames,
): Promise<void> {
  const writing = { names, dynamicMark: await dynamicMark(edits, opened, cells) };
  const emptied = new Set<string>();
  for (const { name, path } of opened.part.sheets) {
    const sheet = cells.get(name);
    if (!sheet) continue;
    const patched = patchSheet(path, await edits.text(path), sheet, writing);
    edits.set(path, patched.xml);
    for (const address of patched.emptied) emptied.add(address);
  }
  await mendCalculationChain(edits, opened, emptied);
}

/**
 * The file with some cells changed, and with the tables that took in rows. Parts that are not touched keep their compressed bytes, a touched
 * sheet keeps every character that no edit is about.
 */
export async function patchWorkbook(
  opened: OpenedWorkbook,
  cells: WorkbookEdits,
  names: FunctionNames,
  tables: readonly Table[] = opened.book.tables,
): Promise<PatchedWorkbook> {
  const edits = new PackageEdits(opened.file);
  await patchCells(edits, opened, cells, names);
  await patchTableAreas(edits, opened, tables);
  const bytes = await opened.file.rewrite(edits.changes);
  const changed = cells.size > 0;
  return { bytes, stale: staleParts(opened.file, { values: changed, parts: changed }) };
}
