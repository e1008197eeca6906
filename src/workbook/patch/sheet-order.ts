/** In which order the elements of a sheet stand, up to those that are put into it (ECMA-376 Part 1, 18.3.1.99). */
const order =
  "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing".split(
    " ",
  );

/** What may stand before the element behind this one. */
export const upTo = (name: string): ReadonlySet<string> =>
  new Set(order.slice(0, order.indexOf(name) + 1));
