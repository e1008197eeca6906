import type { WorkbookPackage } from "../package/open-package";

/** Parts that keep a copy of cell values, or vouch for them, and what to tell the person. */
const keepers: readonly (readonly [RegExp, string])[] = [
  [
    /^xl\/pivotCache\//i,
    "Pivot tables still show the old values: refresh them in the spreadsheet.",
  ],
  [
    /^xl\/charts\/chart[^/]*\.xml$/i,
    "Pictures of charts inside the file still show the old values until a spreadsheet opens and saves it.",
  ],
  [/^_xmlsignatures\//i, "The digital signature of the file no longer holds: sign it again."],
  [
    /^xl\/externalLinks\//i,
    "Values that come from other workbooks are those of the last time the file was saved.",
  ],
];

/** What no longer agrees with the cells after some of them changed. */
export function staleParts(file: WorkbookPackage): string[] {
  return keepers
    .filter(([pattern]) => file.paths.some((path) => pattern.test(path)))
    .map(([, sentence]) => sentence);
}
