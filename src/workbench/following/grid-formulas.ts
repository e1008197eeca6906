/**
 * Formulas of rules in the grid when rows, columns or cells are inserted, removed or moved. The grid leaves a
 * range with dollar signs as it was, lets no range grow, and moves a formula without its cells when a row is put
 * in before a cell: each would judge by other cells than its rule was written for. Here they follow as they do
 * for saving. What else moves cells, the grid does by itself.
 */
import {
  DisposableCollection,
  type IDisposable,
  type IRange,
  type IUniverInstanceService,
  toDisposable,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  type EffectRefRangeParams,
  EffectRefRangId,
  InsertColMutation,
  InsertRowMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  type RefRangeService,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { FormulaRefRangeService } from "@univerjs/sheets-formula";
import { areaOf, rangeOf } from "../../engine/ranges";
import type { Area } from "../../workbook/book";
import { shiftedFormula } from "../../workbook/formula/shared";
import { type Change, changeBy } from "./changes";
import { type Followed, isGone } from "./followed";
import { followFormulas } from "./formulas";
import { seenFrom } from "./reads";

/** A rule's cells on one sheet, and the formulas for the first of them. */
export interface RuleInGrid {
  readonly sheetId: string;
  readonly areas: readonly Area[];
  readonly formulas: readonly string[];
}

export interface FollowedInGrid {
  /** The cells that the rule stands on. */
  readonly own: readonly Followed[];
  /** With those that it names. */
  readonly cells: readonly Followed[];
  /** What becomes of it: one for all of its cells whose formulas are the same; none of what is gone. */
  after(change: Change): readonly RuleInGrid[];
}

type Sheets = Pick<Workbook, "getSheetBySheetName" | "getSheetBySheetId">;

export function followInGrid(
  sheets: Sheets,
  sheetId: string,
  areas: readonly Area[],
  formulas: readonly string[],
): FollowedInGrid {
  const isComputed = (text: string) => text.startsWith("=");
  const idOf = (name: string) => sheets.getSheetBySheetName(name)?.getSheetId() ?? "";
  const nameOf = (id: string) => sheets.getSheetBySheetId(id)?.getName();
  const [area = { row: 0, column: 0, rows: 0, columns: 0 }] = areas;
  const home = { sheetId, area };
  const computed = formulas.map((text) => (isComputed(text) ? text.slice(1) : undefined));
  const { reads, at } = followFormulas(home, Object.fromEntries(computed.entries()), idOf);
  const own = areas.map(
    (area): Followed => ({
      sheetId,
      area,
      bond: "ruled",
      reads: reads.map((read) => seenFrom(read, home, area)),
    }),
  );
  return {
    own,
    cells: [...own, ...own.flatMap(({ reads = [] }) => reads)],
    after(change) {
      const now = own
        .flatMap(change)
        .filter((part) => !isGone(part))
        .sort(({ area: one }, { area: other }) => one.row - other.row || one.column - other.column);
      const alike = new Map<string, RuleInGrid>();
      for (const part of now) {
        const texts = at(part, nameOf);
        if (!texts) continue;
        const { sheetId, area } = part;
        const its = formulas.map((text, index) => (isComputed(text) ? `=${texts[index]}` : text));
        const key = JSON.stringify([
          sheetId,
          its.map((text) =>
            isComputed(text) ? shiftedFormula(text)(-area.row, -area.column) : text,
          ),
        ]);
        const before = alike.get(key);
        const itsAreas = [...(before?.areas ?? []), area];
        alike.set(key, { sheetId, formulas: its, ...before, areas: itsAreas });
      }
      return [...alike.values()];
    },
  };
}

const mutationOf: Readonly<Record<string, string>> = {
  [EffectRefRangId.InsertRowCommandId]: InsertRowMutation.id,
  [EffectRefRangId.InsertColCommandId]: InsertColMutation.id,
  [EffectRefRangId.RemoveRowCommandId]: RemoveRowMutation.id,
  [EffectRefRangId.RemoveColCommandId]: RemoveColMutation.id,
  [EffectRefRangId.MoveRowsCommandId]: MoveRowsMutation.id,
  [EffectRefRangId.MoveColsCommandId]: MoveColsMutation.id,
  [EffectRefRangId.MoveRangeCommandId]: MoveRangeMutation.id,
};

type Follow = Parameters<RefRangeService["registerRefRange"]>[1];
type Steps = ReturnType<Follow>;

interface Services {
  readonly _refRangeService: RefRangeService;
  readonly _univerInstanceService: IUniverInstanceService;
}

const nothing: Steps = { redos: [], undos: [] };

/** Before the first workbook. */
export function moveRulesWithTheirCells(): void {
  const service = FormulaRefRangeService.prototype;
  const { registerRangeFormula } = service;
  service.registerRangeFormula = function (unitId, sheetId, ranges, formulas, callback) {
    const before = JSON.stringify([{ sheetId, formulas, areas: ranges.map(areaOf) }]);
    const then = (rules: readonly RuleInGrid[]) => {
      if (JSON.stringify(rules) === before) return nothing;
      const here = rules.filter((rule) => rule.sheetId === sheetId);
      return callback(
        here.map(({ areas, formulas }) => {
          return { formulas: [...formulas], ranges: areas.map(rangeOf) };
        }),
      );
    };
    return both(
      registerRangeFormula.call(otherwise(this), unitId, sheetId, ranges, formulas, callback),
      follow(this, unitId, sheetId, ranges.map(areaOf), formulas, then),
    );
  };
}

const partsOf = (service: FormulaRefRangeService) => service as unknown as Services;

/** The grid's own way, which hears nothing of rows and columns that are inserted, removed or moved. */
function otherwise(service: FormulaRefRangeService): FormulaRefRangeService {
  const ranges = partsOf(service)._refRangeService;
  const registerRefRange = (range: IRange, follow: Follow, unitId: string, sheetId: string) => {
    const told: Follow = (command) => (command.id in mutationOf ? nothing : follow(command));
    return ranges.registerRefRange(range, told, unitId, sheetId);
  };
  return Object.create(service, { _refRangeService: { value: { registerRefRange } } });
}

function follow(
  service: FormulaRefRangeService,
  unitId: string,
  sheetId: string,
  areas: readonly Area[],
  formulas: readonly string[],
  then: (now: readonly RuleInGrid[]) => Steps,
): IDisposable {
  const { _refRangeService: ranges, _univerInstanceService: units } = partsOf(service);
  const workbook = units.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const all = new DisposableCollection();
  if (!workbook) return all;
  const rule = followInGrid(workbook, sheetId, areas, formulas);
  const told: Follow = (command) => {
    const change = changeOf(command, workbook.getActiveSheet().getSheetId());
    return change ? then(rule.after(change)) : nothing;
  };
  for (const { sheetId, area } of rule.cells)
    if (sheetId !== "") all.add(ranges.registerRefRange(rangeOf(area), told, unitId, sheetId));
  return all;
}

/** What commands call otherwise than the mutations that they become. */
interface CommandParams extends Partial<Readonly<Record<"fromRange" | "toRange", IRange>>> {
  readonly fromSubUnitId?: string;
  readonly toSubUnitId?: string;
}

/** A command that does not say on which sheet it happens means the one that is seen. */
export function changeOf({ id, params }: EffectRefRangeParams, seen: string): Change | undefined {
  const mutation = mutationOf[id];
  if (mutation === undefined) return undefined;
  const { fromRange, toRange, fromSubUnitId, toSubUnitId } = (params ?? {}) as CommandParams;
  const from = fromSubUnitId ?? seen;
  return changeBy(mutation, {
    subUnitId: seen,
    ...params,
    ...(fromRange && { sourceRange: fromRange, targetRange: toRange }),
    from: { subUnitId: from },
    to: { subUnitId: toSubUnitId ?? from },
  });
}

function both(...all: readonly IDisposable[]): IDisposable {
  return toDisposable(() => {
    for (const one of all) one.dispose();
  });
}
