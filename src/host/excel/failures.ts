import { type FunctionNames, shownFormula } from "../../workbook/formula/stored-form";
import type { FailedCell } from "../host";
import { inExcel, tellsSpills } from "./batch";
import { cellWithin, rangeAt } from "./cells";

/** A formula cell of ours, with the range that it spills to where it does. */
interface OurCell {
  readonly formula: string;
  readonly range: Excel.Range;
}

/** See SheetHost.listFailures. A spilled answer may fail in some of its cells only. */
export function listFailures(namespace: string): Promise<readonly FailedCell[]> {
  return inExcel(async (context) => {
    const cells = await ourCells(context, namespace);
    for (const { range } of cells) range.load("address,values,valueTypes");
    await context.sync();
    return cells.flatMap(({ formula, range }) =>
      range.valueTypes.flatMap((types: string[], row: number) =>
        types.flatMap((type, column) => {
          if (type !== "Error") return [];
          const error = String(range.values[row]?.[column]);
          const isSpilled = row > 0 || column > 0;
          return [
            {
              address: cellWithin(range.address, row, column),
              formula,
              value: error,
              error,
              // What spilled from another cell got its error through an input, not for want of a link.
              lostLink: error === "#NAME?" && !isSpilled,
              ...(isSpilled && { spilledFrom: cellWithin(range.address, 0, 0) }),
            },
          ];
        }),
      ),
    );
  });
}

/** Every cell with a formula that calls one of our functions. */
async function ourCells(context: Excel.RequestContext, namespace: string): Promise<OurCell[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const found = worksheets.items.map((sheet) =>
    sheet.getRange().getSpecialCellsOrNullObject("Formulas"),
  );
  for (const one of found) one.load("address");
  await context.sync();
  const filled = found.filter(({ isNullObject }) => !isNullObject);
  for (const { areas } of filled) areas.load("items/formulas");
  await context.sync();
  const spills = tellsSpills();
  const ours = callsOurs(namespace);
  const cells = filled
    .flatMap(({ areas }) => areas.items)
    .flatMap((area) =>
      area.formulas.flatMap((line: unknown[], row: number) =>
        line.flatMap((formula, column) => {
          if (typeof formula !== "string" || !ours.test(formula)) return [];
          const cell = area.getCell(row, column);
          return [{ formula, cell, spill: spills ? cell.getSpillingToRangeOrNullObject() : cell }];
        }),
      ),
    );
  for (const { spill } of cells) spill.load("address");
  await context.sync();
  return cells.map(({ formula, cell, spill }) => ({
    formula,
    range: spill.isNullObject ? cell : spill,
  }));
}

/** Our functions as a cell shows them, or as it shows them while the add-in is not there. */
const callsOurs = (namespace: string) =>
  new RegExp(`(^|[^\\w.])(${namespace}\\.|_xldudf_${namespace}_)`, "i");

/** How often and how long the functions are waited for after their formulas were entered again. */
const LOOKS = 20;
const PAUSE = 100;

/** See SheetHost.relink. */
export async function relink(
  failed: readonly FailedCell[],
  namespace: string,
  names: FunctionNames,
  pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
): Promise<readonly FailedCell[]> {
  const lost = failed.filter(({ lostLink }) => lostLink);
  await inExcel(async (context) => {
    const cells = lost.map(({ address, formula }) => ({
      formula,
      range: rangeAt(context, address),
    }));
    for (const { range } of cells) range.load("formulas");
    await context.sync();
    for (const { formula, range } of cells) {
      if (range.formulas[0]?.[0] !== formula) continue;
      range.formulas = [[`=${shownFormula(formula.slice(1), names)}`]];
    }
    await context.sync();
  });
  const again = new Set(lost.map(({ address }) => address));
  for (let look = 1; ; look += 1) {
    const still = (await listFailures(namespace)).filter(({ address }) => again.has(address));
    const waiting = still.some(({ error }) => error === "#BUSY!");
    if (!waiting || look === LOOKS) return still;
    await pause(PAUSE);
  }
}
