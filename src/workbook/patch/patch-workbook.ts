import type { Area, Table } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import type { OpenedWorkbook } from "../read/read-workbook";
import type { InFile } from "../sheet-rules";
import { readXml } from "../xml";
import { withArrived } from "./arrived-rules";
import type { CellWriting } from "./cell-xml";
import { patchComments } from "./comment-cells";
import type { CommentChanges } from "./comment-changes";
import { filterNames, type namesBetween, patchNames } from "./defined-names";
import { dynamicMark } from "./dynamic-mark";
import type { CellEdit, WorkbookEdits } from "./edits";
import { patchFrame, patchSheetStates } from "./frame-patch";
import type { LayoutEdits } from "./layout-edits";
import { PackageEdits } from "./package-edits";
import type { ElementChanges, Rules, SheetRuleChanges } from "./rule-changes";
import { patchRules } from "./rule-elements";
import { holdersIn } from "./rule-holders";
import { patchSheet } from "./sheet-patch";
import { staleParts } from "./stale";
import { noStyles, StyleSheet } from "./style-sheet";
import { patchTables } from "./tables";

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

const styleSheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

/** The looks of the workbook; one that has none gets a style sheet. */
async function styleSheetOf(edits: PackageEdits, { file, part }: OpenedWorkbook) {
  const path = part.paths.styles;
  if (path !== undefined && file.has(path))
    return { path, styles: new StyleSheet(path, await edits.text(path)) };
  const added = edits.freePath(
    `${part.path.slice(0, part.path.lastIndexOf("/") + 1)}styles`,
    ".xml",
  );
  await edits.add(added, noStyles, styleSheetType, part.path, "styles");
  return { path: added, styles: new StyleSheet(added, noStyles) };
}

const values = (cells: WorkbookEdits): CellEdit[] =>
  [...cells.values()].flatMap((sheet) => [...sheet.values()].flatMap((line) => [...line.values()]));

/** Puts edits of cells and around them among others into a package that is going to be rewritten. */
export async function patchSheets(
  edits: PackageEdits,
  opened: OpenedWorkbook,
  cells: WorkbookEdits,
  names: FunctionNames,
  layout: ReadonlyMap<string, LayoutEdits> = new Map(),
): Promise<void> {
  const columns = [...layout.values()].flatMap((sheet) => [...sheet.columns.values()]);
  const looks = [...values(cells), ...columns].some(({ look }) => look)
    ? await styleSheetOf(edits, opened)
    : undefined;
  const writing: CellWriting = {
    names,
    dynamicMark: await dynamicMark(edits, opened, cells),
    ...(looks && { lookOf: (index, look) => looks.styles.lookOf(index, look) }),
  };
  const emptied = new Set<string>();
  for (const { name, path } of opened.part.sheets) {
    const [sheet, around] = [cells.get(name), layout.get(name)];
    if (!sheet && !around) continue;
    const before = await edits.text(path);
    const patched = patchSheet(path, before, sheet ?? new Map(), writing, around?.rows);
    edits.set(path, around ? patchFrame(path, patched.xml, around, writing.lookOf) : patched.xml);
    for (const address of patched.emptied) emptied.add(address);
  }
  if (looks) edits.set(looks.path, looks.styles.text());
  if ([...layout.values()].some(({ hidden }) => hidden !== undefined)) {
    const { path } = opened.part;
    edits.set(path, patchSheetStates(path, await edits.text(path), layout));
  }
  await mendCalculationChain(edits, opened, emptied);
}

/** What changed beside the cells. */
export interface Beside {
  readonly tables?: readonly Table[];
  readonly layout?: ReadonlyMap<string, LayoutEdits>;
  readonly definedNames?: ReturnType<typeof namesBetween>;
  /** By the sheet's name. */
  readonly rules?: ReadonlyMap<string, SheetRuleChanges>;
  /** By the sheet's name: where cells stood that were put elsewhere. */
  readonly cuts?: ReadonlyMap<string, readonly Area[]>;
  /** By the sheet's name. */
  readonly comments?: ReadonlyMap<string, CommentChanges>;
}

/**
 * The file with some cells changed or what stands around them, and with the tables that took in rows. Parts
 * that are not touched keep their compressed bytes, a touched sheet keeps every character that no edit is about.
 */
export async function patchWorkbook(
  opened: OpenedWorkbook,
  cells: WorkbookEdits,
  names: FunctionNames,
  beside: Beside = {},
): Promise<PatchedWorkbook> {
  const { tables = opened.book.tables, layout, definedNames, comments = new Map() } = beside;
  const { file, part } = opened;
  const edits = new PackageEdits(file);
  await patchSheets(edits, opened, cells, names, layout);
  await patchTables(edits, opened, tables);
  const rulesLeft = await patchAllRules(edits, opened, names, beside);
  for (const [sheet, changes] of comments) await patchComments(edits, opened, sheet, changes);
  const namesNow = new Map([...(definedNames ?? []), ...filterNames(layout)]);
  if (namesNow.size > 0)
    edits.set(part.path, patchNames(part.path, await edits.text(part.path), namesNow, names));
  const bytes = await file.rewrite(edits.changes);
  const changed = values(cells).some(({ value }) => value !== undefined);
  const parts = edits.changes.size > 0;
  const stale = staleParts(file, { values: changed, parts });
  return { bytes, stale: [...stale, ...(rulesLeft ? [rulesStay] : [])] };
}

const rulesStay =
  "Rules of kinds that are not shown here stand in the saved file where they stood, though cells of theirs were put elsewhere.";

/** Whether some are left where their cells no longer are. */
async function patchAllRules(
  edits: PackageEdits,
  opened: OpenedWorkbook,
  names: FunctionNames,
  { rules, cuts }: Beside,
): Promise<boolean> {
  let left = false;
  for (const { name, path } of opened.part.sheets) {
    const [its, cut = []] = [rules?.get(name), cuts?.get(name)];
    if (!its) continue;
    const { changes, arrived } = its;
    if (cut.length > 0 || ![...changes.values()].every(isNothing)) {
      const before = await edits.text(path);
      const { xml, stale } = patchRules(path, before, changes, names, cut);
      if (xml !== before) edits.set(path, xml);
      left ||= stale;
    }
    if (rulesOf(arrived).length === 0) continue;
    const looks = await looksOf(opened, arrived);
    edits.set(path, withArrived(path, await edits.text(path), arrived, looks, names));
  }
  return left;
}

const isNothing = ({ pieces }: ElementChanges) => pieces.size === 0;

const rulesOf = ({ formats = [], entryRules = [] }: Rules) => [...formats, ...entryRules];

/** The numbers that their own sheets have for the looks of formats. */
async function looksOf({ file }: OpenedWorkbook, { formats = [] }: Rules) {
  const looks = new Map<string, string | undefined>();
  for (const path of new Set(formats.flatMap(({ inFile }) => inFile?.sheet ?? []))) {
    const { holders } = holdersIn(path, await file.text(path));
    for (const { kind, rules } of holders)
      for (const { index, element } of rules)
        if (kind === "cfRule") looks.set(`${index} ${path}`, element.attributes.dxfId);
  }
  return (rule: InFile | undefined) => rule && looks.get(`${rule.index} ${rule.sheet}`);
}
