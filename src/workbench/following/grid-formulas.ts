/**
 * Formulas of rules in the grid when rows or columns are inserted, removed or moved. The grid leaves a range with
 * dollar signs as it was, lets no range grow, and moves a formula without its cells when a row is put in
 * before a cell: each would judge by other cells than its rule was written for. Here they follow as they do
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
  MoveRowsMutation,
  type RefRangeService,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { FormulaRefRangeService } from "@univerjs/sheets-formula";
import { areaOf, rangeOf } from "../../engine/ranges";
import type { Area } from "../../workbook/book";
import { type Change, changeBy, type Followed, isGone } from "./follower";
import { followFormula } from "./formulas";

/** A rule's cells and formulas after a change: none of those that are gone. */
export interface RuleInGrid {
  readonly areas: readonly Area[];
  /** Undefined for one that names cells which are gone. */
  readonly formulas: readonly (string | undefined)[];
}

export interface FollowedInGrid {
  /** All the cells that the rule stands on or names. */
  readonly cells: readonly Followed[];
  after(change: Change): RuleInGrid;
}

type Sheets = Pick<Workbook, "getSheetBySheetName" | "getSheetBySheetId">;

const nowhere: Area = { row: 0, column: 0, rows: 0, columns: 0 };

/** Without areas the formulas are the same for all cells of the rule, as those of lists are. */
export function followInGrid(
  sheets: Sheets,
  sheetId: string,
  areas: readonly Area[],
  formulas: readonly string[],
): FollowedInGrid {
  let change: Change = (followed) => [followed];
  const cells: Followed[] = [];
  const followParts = (sheetId: string, area: Area) => {
    cells.push({ sheetId, area });
    return () => change({ sheetId, area });
  };
  const follow = (sheetId: string, area: Area) => {
    const parts = followParts(sheetId, area);
    return () => parts()[0] as Followed;
  };
  const itsAreas = areas.map((area) => followParts(sheetId, area));
  const left = () => itsAreas.flatMap((now) => now()).filter((followed) => !isGone(followed));
  const home = {
    sheetId,
    area: areas[0] ?? nowhere,
    now: () => left()[0] ?? { sheetId, area: nowhere },
  };
  const idOf = (name: string) => sheets.getSheetBySheetName(name)?.getSheetId() ?? "";
  const nameOf = (id: string) => sheets.getSheetBySheetId(id)?.getName();
  const followed = formulas.map((text) => {
    if (!text.startsWith("=")) return () => text;
    const now = followFormula({ follow }, home, text.slice(1), idOf);
    return () => {
      const formula = now(nameOf);
      return formula === undefined ? undefined : `=${formula}`;
    };
  });
  return {
    cells,
    after(by) {
      change = by;
      return { areas: left().map(({ area }) => area), formulas: followed.map((now) => now()) };
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
  const { registerFormula, registerRangeFormula } = service;
  service.registerFormula = function (unitId, sheetId, formula, callback) {
    const now = ({ formulas: [now] }: RuleInGrid) =>
      now === formula ? nothing : callback(now ?? "=#REF!");
    return both(
      registerFormula.call(otherwise(this), unitId, sheetId, formula, callback),
      follow(this, unitId, sheetId, [], [formula], now),
    );
  };
  service.registerRangeFormula = function (unitId, sheetId, ranges, formulas, callback) {
    const areas = ranges.map(areaOf);
    const before = JSON.stringify({ areas, formulas });
    const now = (rule: RuleInGrid) => {
      if (JSON.stringify(rule) === before) return nothing;
      const whole = rule.formulas.flatMap((formula) => formula ?? []);
      const isGone = rule.areas.length === 0 || whole.length < formulas.length;
      return callback(isGone ? [] : [{ formulas: whole, ranges: rule.areas.map(rangeOf) }]);
    };
    return both(
      registerRangeFormula.call(otherwise(this), unitId, sheetId, ranges, formulas, callback),
      follow(this, unitId, sheetId, areas, formulas, now),
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
  then: (now: RuleInGrid) => Steps,
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
type MoveParams = Readonly<Record<"fromRange" | "toRange", IRange>>;

/** A command that does not say on which sheet it happens means the one that is seen. */
function changeOf({ id, params }: EffectRefRangeParams, seen: string): Change | undefined {
  const mutation = mutationOf[id];
  if (mutation === undefined) return undefined;
  const { fromRange, toRange } = (params ?? {}) as Partial<MoveParams>;
  const moved = fromRange && { sourceRange: fromRange, targetRange: toRange };
  return changeBy(mutation, { subUnitId: seen, ...params, ...moved });
}

function both(...all: readonly IDisposable[]): IDisposable {
  return toDisposable(() => {
    for (const one of all) one.dispose();
  });
}
