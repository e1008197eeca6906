import { impossible } from "../model/refusal";
import { ErrorInInput } from "./answer";
import type { Argument } from "./argument";
import { type Cell, type Cells, isBlank, isError, isOmitted, plainValue } from "./cell";
import { type Limits, type Quantity, quantity, readNumber } from "./quantity";
import { singleCell } from "./single-cell";

/**
 * A row or a column of numbers. Vectors with the same `size` (n components, k doses) must be equally long.
 * With `byCase` it may also be a block, one case a row; with `paired`, places that are blank in every
 * paired argument are dropped; with `gaps` a blank reads as 0, as some hosts have it anyway, at the end too.
 */
export interface Vector<T = readonly number[]> extends Argument<T> {
  readonly kind: "vector";
  readonly element: Quantity;
  readonly size: string;
  readonly optional: boolean;
  readonly byCase: boolean;
  readonly oneForAll: boolean;
  readonly paired: boolean;
  readonly gaps: boolean;
}

type Shape = Partial<Pick<Vector, "byCase" | "oneForAll" | "paired" | "gaps">>;

export function vector(
  name: string,
  size: string,
  unit: string,
  limits: Limits,
  shape: Shape = {},
): Vector {
  return {
    ...vectorShape(name, size, unit, limits, false, shape),
    read(cells) {
      if (isOmitted(cells)) impossible(`${name} is missing. Give ${this.element.allowed}.`);
      return readVector(this, line(name, cells as Cells, this.gaps));
    },
  };
}

/** A vector that may be left out: undefined then. */
export function optionalVector(
  name: string,
  size: string,
  unit: string,
  limits: Limits,
  shape: Shape = {},
): Vector<readonly number[] | undefined> {
  return {
    ...vectorShape(name, size, unit, limits, true, shape),
    read(cells) {
      return isOmitted(cells) ? undefined : readVector(this, line(name, cells as Cells));
    },
  };
}

function vectorShape(
  name: string,
  size: string,
  unit: string,
  limits: Limits,
  optional: boolean,
  { byCase = false, oneForAll = false, paired = false, gaps = false }: Shape,
) {
  const element = quantity(name, unit, limits);
  const shape = { byCase, oneForAll, paired, gaps };
  return { kind: "vector" as const, name, element, size, optional, ...shape };
}

/** The cells of a single row or column in order, blank cells at the end cut unless they count. */
export function line(name: string, cells: Cells, blanksCount = false): readonly Cell[] {
  const at = along(cells);
  const length = blanksCount ? fullLength(name, cells) : usedLength(name, cells);
  return Array.from({ length }, (_, i) => at(i));
}

/** How many values a row or a column brings; undefined where it is left out or blank. */
export function givenLength(name: string, cells: Cells | null): number | undefined {
  return isOmitted(cells) ? undefined : usedLength(name, cells as Cells) || undefined;
}

function usedLength(name: string, cells: Cells): number {
  const at = along(cells);
  let length = fullLength(name, cells);
  while (length > 0 && isBlank(at(length - 1))) length -= 1;
  return length;
}

function fullLength(name: string, cells: Cells): number {
  const rows = cells.length;
  const columns = cells[0]?.length ?? 0;
  if (rows > 1 && columns > 1) {
    impossible(`${name} is a block of ${rows} × ${columns} cells. Give one row or one column.`);
  }
  return rows === 1 ? columns : rows;
}

function along(cells: Cells): (i: number) => Cell {
  const [first] = cells;
  return cells.length === 1 ? (i) => first?.[i] : (i) => cells[i]?.[0];
}

/** The numbers of a vector, each checked; a refusal names the place. */
export function readVector(
  {
    name,
    element,
    gaps = false,
  }: Pick<Vector<readonly number[] | undefined>, "name" | "element"> & Shape,
  cells: readonly Cell[],
): number[] {
  if (cells.length === 0) impossible(`${name} is blank. Give ${element.allowed}.`);
  const place = (i: number) => (cells.length === 1 ? "" : ` (${i + 1} of ${cells.length})`);
  const values = new Array<number>(cells.length);
  for (let i = 0; i < cells.length; i += 1) {
    const cell = gaps && isBlank(cells[i]) ? 0 : cells[i];
    values[i] =
      typeof cell === "number" && cell >= element.least && cell <= element.most && !element.whole
        ? cell
        : readNumber(element, cell, place(i));
  }
  return values;
}

/** A row or a column of names, each a text or a number: levels, batches, blocks, periods. */
export interface Labels extends Argument<readonly (string | number)[] | undefined> {
  readonly kind: "labels";
  readonly size: string;
  readonly paired: boolean;
}

export function optionalLabels(name: string, size: string, paired = false): Labels {
  return {
    kind: "labels",
    name,
    size,
    paired,
    read(cells) {
      return isOmitted(cells) ? undefined : readLabels(name, line(name, cells as Cells));
    },
  };
}

/** The same, where it must be given. */
export function labels(
  name: string,
  size: string,
  paired = false,
): Argument<readonly (string | number)[]> & Pick<Labels, "kind" | "size" | "paired"> {
  return {
    kind: "labels",
    name,
    size,
    paired,
    read(cells) {
      if (isOmitted(cells)) impossible(`${name} is missing. Give names or numbers.`);
      return readLabels(name, line(name, cells as Cells));
    },
  };
}

/** One name or number that may be left out. */
export function optionalLabel(name: string): Argument<string | number | undefined> {
  return {
    name,
    read(cells) {
      return isOmitted(cells) ? undefined : readLabels(name, [singleCell(name, cells as Cells)])[0];
    },
  };
}

/** Names are the same whatever their case, as everywhere in a sheet: the first spelling stands for all. */
function readLabels(name: string, cells: readonly Cell[]): (string | number)[] {
  const spellings = new Map<string, string>();
  return cells.map((cell, i) => {
    const value = plainValue(cell);
    if (isError(value)) throw new ErrorInInput(value);
    if (typeof value === "string" && value.trim() !== "") {
      const spelling = spellings.get(value.trim().toLowerCase()) ?? value.trim();
      spellings.set(spelling.toLowerCase(), spelling);
      return spelling;
    }
    if (typeof value === "number" && Number.isFinite(value)) return value;
    return impossible(
      `${name} (${i + 1} of ${cells.length}) is ${notALabel(value)}. Give a name or a number.`,
    );
  });
}

function notALabel(value: Cell): string {
  if (isBlank(value) || typeof value === "string") return "blank";
  return typeof value === "boolean" ? String(value).toUpperCase() : "no plain value";
}
