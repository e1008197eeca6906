import type { DefinedName } from "../book";
import type { FunctionNames } from "../formula/stored-form";
import type { WorkbookPackage } from "../package/open-package";
import { relationshipsOf } from "../package/relationships";
import { WorkbookRefusal } from "../workbook-refusal";
import { prefixed, readShortXml } from "../xml";
import type { Allowance } from "./allowance";

/** What the workbook's own part says: its sheets, where they are, and its names. */
export interface WorkbookPart {
  readonly path: string;
  readonly sheets: readonly SheetEntry[];
  readonly definedNames: readonly DefinedName[];
  readonly paths: {
    readonly styles: string | undefined;
    readonly theme: string | undefined;
    readonly strings: string | undefined;
    readonly metadata: string | undefined;
    readonly calculationChain: string | undefined;
  };
}

export interface SheetEntry {
  readonly name: string;
  readonly path: string;
  readonly hidden: boolean;
}

/** Each sheet has a name and a part of its own, whatever the case of the letters. */
function refuseTwins(sheets: readonly SheetEntry[]): void {
  const seen = new Set<string>();
  for (const { name, path } of sheets)
    for (const [key, what] of [
      [`name ${name}`, `two of its sheets are named ${name}`],
      [`part ${path}`, `two of its sheets are the part ${path}`],
    ] as const) {
      const sizeBefore = seen.size;
      if (seen.add(key.toLowerCase()).size === sizeBefore)
        throw new WorkbookRefusal(`The file is damaged: ${what}.`);
    }
}

async function workbookPath(file: WorkbookPackage): Promise<string> {
  const main = (await relationshipsOf(file, "")).find(({ type }) => type === "officeDocument");
  const path = main?.path;
  if (path === undefined || !file.has(path))
    throw new WorkbookRefusal("The file is not a workbook: its package has no workbook in it.");
  if (path.toLowerCase().endsWith(".bin"))
    throw new WorkbookRefusal("The file is in the binary format .xlsb: save it as .xlsx first.");
  return path;
}

/** Names that programs keep for themselves (print areas, placeholders of newer functions). */
const isInternalName = (name: string) => name.startsWith("_xl");

export async function readWorkbookPart(
  file: WorkbookPackage,
  names: FunctionNames,
  allowance: Allowance,
): Promise<WorkbookPart> {
  const path = await workbookPath(file);
  const relationships = await relationshipsOf(file, path);
  const byId = new Map(relationships.map((relationship) => [relationship.id, relationship]));
  const entries: { name: string; hidden: boolean; path: string | undefined; type: string }[] = [];
  const found: { name: string; sheet: number | undefined; formula: string }[] = [];
  let inName = false;
  let countsFrom1904 = false;
  let root = "";
  readShortXml(path, await file.text(path), {
    open({ name, attributes }) {
      root ||= name;
      if (name === "workbookPr") countsFrom1904 = /^(?:1|true)$/.test(attributes.date1904 ?? "");
      if (name === "sheet") {
        const relationship = byId.get(prefixed(attributes, "id") ?? "");
        entries.push({
          name: attributes.name ?? "",
          hidden: (attributes.state ?? "visible") !== "visible",
          path: relationship?.path,
          type: relationship?.type ?? "",
        });
      }
      inName = name === "definedName";
      if (!inName) return;
      const sheet = attributes.localSheetId === undefined ? undefined : +attributes.localSheetId;
      found.push({ name: attributes.name ?? "", sheet, formula: "" });
    },
    close() {
      inName = false;
    },
    text(run) {
      const last = found.at(-1);
      if (inName && last) last.formula += run;
    },
  });
  if (root !== "workbook")
    throw new WorkbookRefusal("The file is not a workbook: its main part is another document.");
  if (countsFrom1904)
    throw new WorkbookRefusal(
      "The workbook counts its days from 1904, so that each date would be read four years and a day too early. Turn that off in the options of the workbook, add 1462 to each date, and save it.",
    );
  const definedNames = found
    .filter(({ name }) => name !== "" && !isInternalName(name))
    .map(({ name, sheet, formula }): DefinedName => {
      const home = sheet === undefined ? undefined : entries[sheet]?.name;
      const shown = allowance.formula(formula, names, () => `the name ${name}`);
      return home === undefined ? { name, formula: shown } : { name, formula: shown, sheet: home };
    });
  const pathOf = (type: string) => relationships.find((its) => its.type === type)?.path;
  const sheets = entries.flatMap(({ name, hidden, path: sheetPath, type }) =>
    type === "worksheet" && sheetPath !== undefined ? [{ name, hidden, path: sheetPath }] : [],
  );
  refuseTwins(sheets);
  return {
    path,
    sheets,
    definedNames,
    paths: {
      styles: pathOf("styles"),
      theme: pathOf("theme"),
      strings: pathOf("sharedStrings"),
      metadata: pathOf("sheetMetadata"),
      calculationChain: pathOf("calcChain"),
    },
  };
}
