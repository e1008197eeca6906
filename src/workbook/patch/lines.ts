/** Rows and columns as a sheet's XML has them, with other sizes and another visibility. */
import { fileOfCharacters } from "../column-width";
import type { LookOf } from "./edits";
import type { LineEdit } from "./layout-edits";

type Attributes = Readonly<Record<string, string | undefined>>;

const shown = ({ hidden }: LineEdit) =>
  hidden === undefined ? {} : { hidden: hidden ? "1" : undefined };

export function rowAttributes(own: Attributes, edit: LineEdit): Attributes {
  const { size } = edit;
  // A row may have been hidden by a height of nothing.
  const usual = size === null || (edit.hidden === false && size === undefined && own.ht === "0");
  return {
    ...own,
    ...(usual && { ht: undefined, customHeight: undefined }),
    ...(typeof size === "number" && { ht: `${size}`, customHeight: "1" }),
    ...shown(edit),
  };
}

/** Columns beside one another that have all in common. */
export interface ColumnRun {
  readonly first: number;
  readonly last: number;
  readonly attributes: Attributes;
}

/** Without a width a column would be as wide as nothing. */
function columnAttributes(
  own: Attributes,
  edit: LineEdit,
  { usualWidth, lookOf }: ColumnWriting,
): Attributes {
  const { size, look } = edit;
  const width = Number(own.width) > 0 ? own.width : usualWidth;
  return {
    ...own,
    width,
    ...(size === null && { width: usualWidth, customWidth: undefined, bestFit: undefined }),
    ...(typeof size === "number" && {
      width: `${fileOfCharacters(size)}`,
      customWidth: "1",
      bestFit: undefined,
    }),
    ...(look && lookOf && { style: `${lookOf(Number(own.style ?? 0), look)}` }),
    ...shown(edit),
  };
}

export interface ColumnWriting {
  readonly usualWidth: string;
  readonly lookOf: LookOf | undefined;
}

/** The runs, those cut up that hold a column which is edited. */
export function editedColumns(
  runs: readonly ColumnRun[],
  edits: ReadonlyMap<number, LineEdit>,
  writing: ColumnWriting,
): ColumnRun[] {
  const left = new Map([...edits].sort(([one], [other]) => one - other));
  const cut = runs.flatMap((run) => {
    const pieces: ColumnRun[] = [];
    let { first } = run;
    for (const [column, edit] of left) {
      if (column < first || column > run.last) continue;
      left.delete(column);
      if (column > first) pieces.push({ ...run, first, last: column - 1 });
      const attributes = columnAttributes(run.attributes, edit, writing);
      pieces.push({ first: column, last: column, attributes });
      first = column + 1;
    }
    return first <= run.last ? [...pieces, { ...run, first }] : pieces;
  });
  const fresh = [...left].map(([column, edit]) => ({
    first: column,
    last: column,
    attributes: columnAttributes({}, edit, writing),
  }));
  return [...cut, ...fresh].sort((one, other) => one.first - other.first);
}
