/**
 * Rules whose cells are cut and put on another sheet, or whose formulas name such cells. The grid follows a rule
 * on its own sheet only: there it would vanish, or stand at the same cells of the wrong sheet.
 */
import {
  generateRandomId,
  type IRange,
  type ISheetDataValidationRule,
  type Workbook,
} from "@univerjs/core";
import {
  AddDataValidationMutation,
  RemoveDataValidationMutation,
  UpdateDataValidationMutation,
  UpdateRuleType,
} from "@univerjs/data-validation";
import {
  type EffectRefRangeParams,
  EffectRefRangId,
  RefRangeService,
  SheetInterceptorService,
} from "@univerjs/sheets";
import {
  AddConditionalRuleMutation,
  ConditionalFormattingRuleModel,
  createCfId,
  DeleteConditionalRuleMutation,
  type IConditionFormattingRule,
  SetConditionalRuleMutation,
  SHEET_CONDITIONAL_FORMATTING_PLUGIN,
} from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import { areaOf, rangeOf } from "../../engine/ranges";
import { without } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";
import type { Step } from "../grid/one-step";
import type { Change } from "./changes";
import { changeOf, followInGrid, type RuleInGrid } from "./grid-formulas";

const mutations = new Set([
  AddConditionalRuleMutation.id,
  SetConditionalRuleMutation.id,
  DeleteConditionalRuleMutation.id,
  AddDataValidationMutation.id,
  UpdateDataValidationMutation.id,
  RemoveDataValidationMutation.id,
]);

function isToOtherSheet({ id, params }: { readonly id: string; readonly params?: unknown }) {
  const { fromSubUnitId: from, toSubUnitId: to } = (params ?? {}) as Record<string, string>;
  return id === EffectRefRangId.MoveRangeCommandId && to !== undefined && from !== to;
}

/** What the grid itself would make of such rules is not done. Before the first workbook. */
export function leaveRulesOnTheirSheet(): void {
  const service = RefRangeService.prototype;
  const { registerRefRange } = service;
  service.registerRefRange = function (range, follow, unitId, sheetId) {
    const told: typeof follow = (command) => {
      const steps = follow(command);
      if (!isToOtherSheet(command)) return steps;
      const others = <T extends { id: string }>(all: T[]) =>
        all.filter(({ id }) => !mutations.has(id));
      return { ...steps, redos: others(steps.redos), undos: others(steps.undos) };
    };
    return registerRefRange.call(this, range, told, unitId, sheetId);
  };
}

/** The grid's clipboard is there with its first workbook. */
export function takeRulesToOtherSheets(grid: Grid): void {
  const clipboard = grid.injector.get(ISheetClipboardService);
  const add = clipboard.addClipboardHook.bind(clipboard);
  clipboard.addClipboardHook = (way) => {
    const paste = way.onPasteCells;
    if (way.id !== SHEET_CONDITIONAL_FORMATTING_PLUGIN || !paste) return add(way);
    return add({
      ...way,
      onPasteCells: (from, to, cells, payload) =>
        `${payload.copyType}` === "CUT" && from?.subUnitId !== to.subUnitId
          ? { redos: [], undos: [] }
          : paste(from, to, cells, payload),
    });
  };
  grid.injector.get(SheetInterceptorService).interceptCommand({
    getMutations: (command) => {
      const workbook = workbookOf(grid);
      const change = isToOtherSheet(command) && changeOf(command as EffectRefRangeParams, "");
      const steps = workbook && change ? stepsOf(grid, workbook, change) : [];
      return {
        redos: steps.map(({ todo }) => todo),
        undos: steps.map(({ undo }) => undo).reverse(),
      };
    },
  });
}

function stepsOf({ injector }: Grid, workbook: Workbook, change: Change): Step[] {
  const unitId = workbook.getUnitId();
  const formats = injector.get(ConditionalFormattingRuleModel);
  const entryRules = injector.get(SheetDataValidationModel);
  const sheets = workbook.getSheets().map((sheet) => sheet.getSheetId());
  const asked = sheets.flatMap((sheetId) =>
    (entryRules.getRules(unitId, sheetId) as ISheetDataValidationRule[]).map((rule) => {
      return { sheetId, rule, now: entryRuleNow(workbook, sheetId, rule, change) };
    }),
  );
  // A cell has one entry rule: that which is put there.
  const put = asked.flatMap(({ sheetId, now }) => now.filter((one) => one.sheetId !== sheetId));
  return [
    ...sheets.flatMap((sheetId) =>
      (formats.getSubunitRules(unitId, sheetId) ?? []).flatMap((rule) => {
        const now = followInGrid(workbook, sheetId, rule.ranges.map(areaOf), formulasOf(rule));
        return formatSteps({ unitId, subUnitId: sheetId }, rule, now.after(change));
      }),
    ),
    ...asked.flatMap(({ sheetId, rule, now }) => {
      const covers = put.filter((one) => one.sheetId === sheetId).flatMap(({ areas }) => areas);
      const left = now.map((one) =>
        one.sheetId === sheetId ? { ...one, areas: covers.reduce(outside, one.areas) } : one,
      );
      return entryRuleSteps({ unitId, subUnitId: sheetId }, rule, left);
    }),
  ];
}

const outside = (areas: readonly Area[], cover: Area) =>
  areas.flatMap((area) => without(area, cover));

/** Lists have one formula for all their cells, as it reads from each sheet. */
function entryRuleNow(
  workbook: Workbook,
  sheetId: string,
  { type, ranges, formula1 = "", formula2 = "" }: ISheetDataValidationRule,
  change: Change,
): readonly RuleInGrid[] {
  const [areas, formulas] = [ranges.map(areaOf), [formula1, formula2]];
  if (type !== "list") return followInGrid(workbook, sheetId, areas, formulas).after(change);
  const source = followInGrid(workbook, sheetId, [], formulas);
  const places = followInGrid(workbook, sheetId, areas, []).after(change);
  return places.map((place) => {
    const [its] = source.after(change, place.sheetId);
    return { ...place, formulas: its?.formulas ?? ["=#REF!", ""] };
  });
}

interface OnSheet {
  readonly unitId: string;
  readonly subUnitId: string;
}

const isSame = (
  { subUnitId }: OnSheet,
  ranges: readonly IRange[],
  formulas: readonly string[],
  now: readonly RuleInGrid[],
) => {
  const [only, ...others] = now;
  const areas = JSON.stringify(ranges.map(areaOf));
  return (
    others.length === 0 &&
    only?.sheetId === subUnitId &&
    JSON.stringify(only.areas) === areas &&
    only.formulas.join("\n") === formulas.join("\n")
  );
};

/** What is left of a rule on its sheet comes first, under its own name. */
function shared(subUnitId: string, now: readonly RuleInGrid[]) {
  const there = now.filter(({ areas }) => areas.length > 0);
  const own = there.find(({ sheetId }) => sheetId === subUnitId);
  return { own, others: there.filter((one) => one !== own) };
}

function entryRuleSteps(
  place: OnSheet,
  rule: ISheetDataValidationRule,
  now: readonly RuleInGrid[],
): Step[] {
  const before = structuredClone(rule);
  if (isSame(place, rule.ranges, [rule.formula1 ?? "", rule.formula2 ?? ""], now)) return [];
  const as = ({ areas, formulas: [formula1, formula2] }: RuleInGrid) => ({
    ...before,
    ranges: areas.map(rangeOf),
    ...(before.formula1 !== undefined && { formula1 }),
    ...(before.formula2 !== undefined && { formula2 }),
  });
  const add = (on: OnSheet, its: ISheetDataValidationRule) => {
    return { id: AddDataValidationMutation.id, params: { ...on, rule: its, source: "patched" } };
  };
  const remove = (on: OnSheet, ruleId: string) => {
    return { id: RemoveDataValidationMutation.id, params: { ...on, ruleId, source: "patched" } };
  };
  const update = (payload: ISheetDataValidationRule) => ({
    id: UpdateDataValidationMutation.id,
    params: {
      ...place,
      ruleId: rule.uid,
      payload: { type: UpdateRuleType.ALL, payload },
      source: "patched",
    },
  });
  const { own, others } = shared(place.subUnitId, now);
  return [
    own
      ? { todo: update(as(own)), undo: update(before) }
      : { todo: remove(place, rule.uid), undo: add(place, before) },
    ...others.map((one) => {
      const [on, uid] = [{ ...place, subUnitId: one.sheetId }, generateRandomId()];
      return { todo: add(on, { ...as(one), uid }), undo: remove(on, uid) };
    }),
  ];
}

function formatSteps(
  place: OnSheet,
  rule: IConditionFormattingRule,
  now: readonly RuleInGrid[],
): Step[] {
  if (isSame(place, rule.ranges, formulasOf(rule), now)) return [];
  const before = structuredClone(rule);
  const as = ({ areas, formulas }: RuleInGrid) => {
    return { ...withFormulas(before, formulas), ranges: areas.map(rangeOf) };
  };
  const add = (on: OnSheet, its: IConditionFormattingRule) => {
    return { id: AddConditionalRuleMutation.id, params: { ...on, rule: its } };
  };
  const remove = (on: OnSheet, cfId: string) => {
    return { id: DeleteConditionalRuleMutation.id, params: { ...on, cfId } };
  };
  const set = (its: IConditionFormattingRule) => {
    return { id: SetConditionalRuleMutation.id, params: { ...place, cfId: rule.cfId, rule: its } };
  };
  const { own, others } = shared(place.subUnitId, now);
  return [
    own
      ? { todo: set(as(own)), undo: set(before) }
      : { todo: remove(place, rule.cfId), undo: add(place, before) },
    ...others.map((one) => {
      const [on, cfId] = [{ ...place, subUnitId: one.sheetId }, createCfId()];
      return { todo: add(on, { ...as(one), cfId }), undo: remove(on, cfId) };
    }),
  ];
}

const isFormula = (key: string, value: unknown): value is string =>
  key === "value" && typeof value === "string" && value.startsWith("=");

/** Its test, or the bounds that are computed. */
function formulasOf({ rule }: IConditionFormattingRule): string[] {
  const formulas: string[] = [];
  JSON.stringify(rule, (key, value) => {
    if (isFormula(key, value)) formulas.push(value);
    return value;
  });
  return formulas;
}

function withFormulas(format: IConditionFormattingRule, formulas: readonly string[]) {
  const left = [...formulas];
  const text = JSON.stringify(format.rule, (key, value) =>
    isFormula(key, value) ? left.shift() : value,
  );
  return { ...format, rule: JSON.parse(text) as IConditionFormattingRule["rule"] };
}
