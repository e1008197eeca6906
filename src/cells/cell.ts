/** What a sheet hands over for one cell: a number, a text, a Boolean, nothing, or an object that wraps one. */
export type Cell = unknown;

/** A range, row by row. */
export type Cells = readonly (readonly Cell[])[];

/** A blank cell reaches us as null or "", depending on the host. */
export function isBlank(cell: Cell): boolean {
  return cell === null || cell === undefined || cell === "";
}

/** The plain value of a cell: linked and formatted values arrive as objects that carry a `basicValue`. */
export function plainValue(cell: Cell): Cell {
  if (typeof cell === "object" && cell !== null && !isError(cell) && "basicValue" in cell) {
    return (cell as { basicValue: Cell }).basicValue;
  }
  return cell;
}

/**
 * The error code that a cell holds ("#DIV/0!"), or undefined for a cell without error.
 * Hosts hand an error over as an error object, or as a value object of the type "Error".
 */
export function errorCode(cell: Cell): string | undefined {
  if (typeof cell !== "object" || cell === null) return undefined;
  const { code, type, basicType, basicValue } = cell as Record<string, unknown>;
  if (typeof code === "string" && code.startsWith("#")) return code;
  if (type === "Error" || basicType === "Error") {
    return typeof basicValue === "string" ? basicValue : "#VALUE!";
  }
  return undefined;
}

export function isError(cell: Cell): boolean {
  return errorCode(cell) !== undefined;
}

/** An argument as a range. A host may hand a single cell over as it is; an omitted argument is null. */
export function asCells(argument: unknown): Cells | null {
  if (argument === null || argument === undefined) return null;
  if (!Array.isArray(argument)) return [[argument]];
  if (argument.length > 0 && !Array.isArray(argument[0])) return [argument as Cell[]];
  return argument as Cell[][];
}

/** Whether nothing was given: the argument left out, or one blank cell. */
export function isOmitted(cells: Cells | null): boolean {
  if (cells === null || cells.length === 0) return true;
  return cells.length === 1 && cells[0]?.length === 1 && isBlank(cells[0][0]);
}

/** How many rows are left when blank rows at the end are cut, as whole columns bring them by the million. */
export function usedRows(cells: Cells): number {
  let rows = cells.length;
  while (rows > 0 && (cells[rows - 1] as readonly Cell[]).every(isBlank)) rows -= 1;
  return rows;
}
