import words from "@univerjs/preset-sheets-core/locales/en-US";
import { sortingWords } from "../sorting/words";

/** The grid's words, but ours where they leave out what a person should know, call the grid by its name, or name what we add. */
export function ownWords(): typeof words {
  const all = structuredClone(words);
  const { sheetConfig, rightClick, definedName } = all["sheets-ui"];
  rightClick.insertColsLeftSuffix = "columns left";
  rightClick.insertColsRightSuffix = "columns right";
  definedName.managerTitle = "All names";
  sheetConfig.deleteSheetContent =
    "Delete this sheet and all that is on it? This cannot be undone, and formulas that read it will show #REF!.";
  sheetConfig.deleteLargeSheetContent = sheetConfig.deleteSheetContent;
  all["sheets-ui"].clipboard.paste.overlappingMergedCells =
    "Nothing was pasted: it would cover merged cells in part. Select another place, or as many rows and columns as they have.";
  all.ui.clipboard.authentication.content =
    "The browser does not let this page read the clipboard. Press Ctrl+V, or allow it in the browser's settings for this page.";
  const { functionList } = all["sheets-formula"];
  functionList.DATE.functionParameter.year.detail =
    "One to four digits. A year from 0 to 1899 is added to 1900: 26 is the year 1926.";
  all["sheets-formula-ui"].functionType.univer = "Others";
  return Object.assign(all, { dosewright: { ...sortingWords.dosewright, comment: "Comment" } });
}
