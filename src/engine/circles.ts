import type { Injector, IRange, Workbook } from "@univerjs/core";
import type { IFormulaDependencyTreeJson } from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-place";
import type { EngineFormula } from "./executor";
import { spilledRanges } from "./read-cells";

export interface Circles {
  /** Every formula that reads its own answer, directly or through others. */
  readonly inside: readonly CellPlace[];
  /** Every other formula that reads one of these: its number means as little. */
  readonly below: readonly CellPlace[];
}

/** The engine computes a circle of formulas once and says nothing: whoever shows the numbers must. */
export async function circlesOf(
  formula: EngineFormula,
  injector: Injector,
  workbook: Workbook,
): Promise<Circles> {
  const trees = await injector.get(formula.ICalculateFormulaService).getAllDependencyJson();
  const own = trees.filter(({ unitId }) => unitId === workbook.getUnitId());
  const reads = edges(own, injector, formula, workbook);
  const readBy = turned(reads);
  // What leads to no circle, or comes from none, is most of a workbook: it goes first.
  const suspects = endless(reads, readBy);
  const fromCircles = endless(readBy, reads);
  const inside = new Set(
    [...suspects].filter((id) => fromCircles.has(id) && reached(reads, id).has(id)),
  );
  const touched = new Set([...inside].flatMap((id) => [...reached(readBy, id)]));
  const cellsOf = (wanted: (id: number) => boolean) =>
    own
      .filter(({ treeId }) => wanted(treeId))
      .map(({ subUnitId, row, column }) => ({ sheetId: subUnitId, row, column }));
  return {
    inside: cellsOf((id) => inside.has(id)),
    below: cellsOf((id) => touched.has(id) && !inside.has(id)),
  };
}

/** Which formulas each formula reads: the engine's own account, and what it leaves out, spilled cells. */
function edges(
  trees: readonly IFormulaDependencyTreeJson[],
  injector: Injector,
  formula: EngineFormula,
  workbook: Workbook,
): Steps {
  const model = injector.get(formula.FormulaDataModel);
  const spills = workbook.getSheets().flatMap((worksheet) =>
    spilledRanges(model, worksheet).flatMap((range) => {
      const sheetId = worksheet.getSheetId();
      const anchor = trees.find(
        ({ subUnitId, row, column }) =>
          subUnitId === sheetId && row === range.startRow && column === range.startColumn,
      );
      return anchor ? [{ sheetId, range, treeId: anchor.treeId }] : [];
    }),
  );
  const known = new Set(trees.map(({ treeId }) => treeId));
  return new Map(
    trees.map(({ treeId, children, rangeList, subUnitId }) => {
      const spilled = spills.filter(({ sheetId, range }) =>
        rangeList.some(
          (read) => (read.sheetId || subUnitId) === sheetId && overlap(read.range, range),
        ),
      );
      const sources = [...children, ...spilled.map((spill) => spill.treeId)];
      return [treeId, sources.filter((source) => known.has(source))];
    }),
  );
}

const overlap = (one: IRange, other: IRange) =>
  one.startRow <= other.endRow &&
  other.startRow <= one.endRow &&
  one.startColumn <= other.endColumn &&
  other.startColumn <= one.endColumn;

type Steps = ReadonlyMap<number, readonly number[]>;

function turned(steps: Steps): Steps {
  const back = new Map([...steps.keys()].map((id) => [id, [] as number[]]));
  for (const [id, nexts] of steps) for (const next of nexts) back.get(next)?.push(id);
  return back;
}

/** The nodes from which steps lead on without an end: what stays when ends are taken off again and again. */
function endless(steps: Steps, back: Steps): Set<number> {
  const left = new Map([...steps].map(([id, nexts]) => [id, nexts.length]));
  const ends = [...left].filter(([, count]) => count === 0).map(([id]) => id);
  for (let end = ends.pop(); end !== undefined; end = ends.pop()) {
    left.delete(end);
    for (const before of back.get(end) ?? []) {
      const count = (left.get(before) ?? 0) - 1;
      left.set(before, count);
      if (count === 0) ends.push(before);
    }
  }
  return new Set(left.keys());
}

/** Everything that can be reached from a node in one step or more. */
function reached(steps: Steps, from: number): Set<number> {
  const found = new Set<number>();
  const open = [...(steps.get(from) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    open.push(...(steps.get(next) ?? []));
  }
  return found;
}
