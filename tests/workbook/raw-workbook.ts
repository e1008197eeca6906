import { strToU8, type Zippable, zipSync } from "fflate";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const types = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export interface RawWorkbook {
  /** What stands inside <worksheet>, by the sheet's name. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly strings?: readonly string[];
  /** What stands inside <styleSheet>. */
  readonly styles?: string;
  readonly definedNames?: string;
  readonly dynamicArrays?: boolean;
  /** Any other part, or another text for one of the above; null leaves a part out. */
  readonly parts?: Readonly<Record<string, string | Uint8Array | null>>;
  /** Relationships of the workbook beyond the usual: type → path. */
  readonly related?: Readonly<Record<string, string>>;
}

const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

const relationships = (list: readonly (readonly [string, string])[]) =>
  `${declaration}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${list
    .map(
      ([type, path], at) =>
        `<Relationship Id="rId${at + 1}" Type="${office}/${type}" Target="${path}"/>`,
    )
    .join("")}</Relationships>`;

/** The metadata part as spreadsheets write it where a cell's formula is a dynamic array (cm="1"). */
const metadata = `<metadata xmlns="${main}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/** The parts of a workbook written by hand, so that a test says exactly what the file holds. */
export function rawParts(raw: RawWorkbook): Record<string, string | Uint8Array> {
  const names = Object.keys(raw.sheets);
  const related: [string, string][] = [
    ...names.map((_, at): [string, string] => ["worksheet", `worksheets/sheet${at + 1}.xml`]),
    ...(raw.strings ? ([["sharedStrings", "sharedStrings.xml"]] as [string, string][]) : []),
    ...(raw.styles ? ([["styles", "styles.xml"]] as [string, string][]) : []),
    ...(raw.dynamicArrays ? ([["sheetMetadata", "metadata.xml"]] as [string, string][]) : []),
    ...Object.entries(raw.related ?? {}),
  ];
  const parts: Record<string, string | Uint8Array | null> = {
    "[Content_Types].xml": `${declaration}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${types}.sheet.main+xml"/>${names
      .map(
        (_, at) =>
          `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="${types}.worksheet+xml"/>`,
      )
      .join("")}</Types>`,
    "_rels/.rels": relationships([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `${declaration}<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${names
      .map((name, at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`)
      .join(
        "",
      )}</sheets>${raw.definedNames ? `<definedNames>${raw.definedNames}</definedNames>` : ""}</workbook>`,
    "xl/_rels/workbook.xml.rels": relationships(related),
    ...Object.fromEntries(
      Object.values(raw.sheets).map((inner, at) => [
        `xl/worksheets/sheet${at + 1}.xml`,
        `${declaration}<worksheet xmlns="${main}" xmlns:r="${office}">${inner}</worksheet>`,
      ]),
    ),
    ...(raw.strings
      ? {
          "xl/sharedStrings.xml": `${declaration}<sst xmlns="${main}">${raw.strings.map((text) => `<si>${text}</si>`).join("")}</sst>`,
        }
      : {}),
    ...(raw.styles
      ? { "xl/styles.xml": `${declaration}<styleSheet xmlns="${main}">${raw.styles}</styleSheet>` }
      : {}),
    ...(raw.dynamicArrays ? { "xl/metadata.xml": declaration + metadata } : {}),
    ...raw.parts,
  };
  return Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== null)) as Record<
    string,
    string | Uint8Array
  >;
}

export function zipped(parts: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const entries: Zippable = {};
  for (const [path, part] of Object.entries(parts))
    entries[path] = typeof part === "string" ? strToU8(part) : part;
  return zipSync(entries);
}

export const rawWorkbook = (raw: RawWorkbook): Uint8Array => zipped(rawParts(raw));
