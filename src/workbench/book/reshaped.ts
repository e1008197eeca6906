/** What became of the rows, columns and sheets of a workbook, where its file can no longer be changed in place. */

/** What a sheet is to the grid whatever it is called, and what it is called. */
export interface NamedSheet {
  readonly id: string;
  readonly name: string;
}

/** In words, one for each that happened. */
export function reshapings(
  linesMoved: boolean,
  before: readonly NamedSheet[],
  now: readonly NamedSheet[],
): string[] {
  const known = ({ id }: NamedSheet, among: readonly NamedSheet[]) =>
    among.find((sheet) => sheet.id === id);
  const left = before.filter((sheet) => known(sheet, now));
  const kept = now.filter((sheet) => known(sheet, before));
  return [
    ...(linesMoved ? ["rows or columns were inserted, deleted or moved"] : []),
    ...(kept.length < now.length ? ["sheets were added"] : []),
    ...(left.length < before.length ? ["sheets were deleted"] : []),
    ...(kept.some((sheet) => known(sheet, before)?.name !== sheet.name)
      ? ["sheets were renamed"]
      : []),
    ...(kept.some(({ id }, index) => left[index]?.id !== id)
      ? ["sheets were put in another order"]
      : []),
  ];
}
