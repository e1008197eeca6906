import type { WorkbookPackage } from "../package/open-package";

/** Parts that keep a copy of cell values, and what to tell the person once these change. */
const keepers: readonly (readonly [RegExp, string])[] = [
  [
    /^xl\/pivotCache\//i,
    "Pivot tables still show the old values: refresh them in the spreadsheet.",
  ],
  [
    /^xl\/charts\/chart[^/]*\.xml$/i,
    "Charts keep the old values in the file until a spreadsheet opens and saves it.",
  ],
];

const signature = /^_xmlsignatures\//i;

/** What no longer agrees with the cells: copies of values that changed, a signature under parts that did. */
export function staleParts(
  file: WorkbookPackage,
  changed: { readonly values: boolean; readonly parts: boolean },
): string[] {
  const holds = (pattern: RegExp) => file.paths.some((path) => pattern.test(path));
  const copies = changed.values ? keepers.filter(([pattern]) => holds(pattern)) : [];
  const signed = changed.parts && holds(signature);
  return [
    ...copies.map(([, sentence]) => sentence),
    ...(signed ? ["The digital signature of the file no longer holds: sign it again."] : []),
  ];
}
