/** What an error says that comes from the sheet and not from one of our functions. */
const WORDS: Readonly<Record<string, string>> = {
  "#SPILL!":
    "Cells that the answer would fill are not empty, or the sheet ends before them. Clear them or move the formula.",
  "#REF!": "The formula refers to cells, a sheet or a column of a table that are not there.",
  "#DIV/0!": "A division by zero or by a blank cell, here or in a cell that the formula reads.",
  "#VALUE!":
    "Most often a text stands where a number belongs: here, or in a cell that the formula reads.",
  "#NAME?":
    "The formula names something that the workbook does not have, or a name that stands for itself.",
  "#CYCLE!": "The formula refers to itself, through other cells or at once.",
};

export const errorWords = (error: string): string =>
  WORDS[error] ?? "A cell that the formula reads, or a native function in it, gives this error.";
