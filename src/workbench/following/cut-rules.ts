/**
 * Rules whose cells are cut and put elsewhere, or whose formulas name such cells. The grid would lose those that
 * come to another sheet, and lets each go by itself: here a cell has the rules that came with it, and no others.
 */
import type { IRange, ISheetDataValidationRule, Workbook } from "@univerjs/core";
import {
  type EffectRefRangeParams,
  EffectRefRangId,
  RefRangeService,
  SheetInterceptorService,
} from "@univerjs/sheets";
import {
  ConditionalFormattingRuleModel,
  SHEET_CONDITIONAL_FORMATTING_PLUGIN,
} from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import { areaOf } from "../../engine/ranges";
import { type Grid, workbookOf } from "../grid/grid";
import { type Change, makingRoom } from "./changes";
import { changeOf, type FollowedInGrid, followInGrid, type RuleInGrid } from "./grid-formulas";
import {
  entryRuleSteps,
  formatSteps,
  formulasOf,
  type RuleStep,
  ruleMutations,
} from "./rule-steps";

const isCut = ({ id }: { readonly id: string }) => id === EffectRefRangId.MoveRangeCommandId;

/** What the grid itself would make of such rules is not done. Before the first workbook. */
export function leaveRulesToCuts(): void {
  const service = RefRangeService.prototype;
  const { registerRefRange } = service;
  service.registerRefRange = function (range, follow, unitId, sheetId) {
    const told: typeof follow = (command) => {
      const steps = follow(command);
      if (!isCut(command)) return steps;
      const others = <T extends { id: string }>(all: T[]) =>
        all.filter(({ id }) => !ruleMutations.has(id));
      return { ...steps, redos: others(steps.redos), undos: others(steps.undos) };
    };
    return registerRefRange.call(this, range, told, unitId, sheetId);
  };
}

/** The grid's clipboard is there with its first workbook. */
export function takeRulesAlong(grid: Grid): void {
  const clipboard = grid.injector.get(ISheetClipboardService);
  const add = clipboard.addClipboardHook.bind(clipboard);
  clipboard.addClipboardHook = (way) => {
    const paste = way.onPasteCells;
    if (way.id !== SHEET_CONDITIONAL_FORMATTING_PLUGIN || !paste) return add(way);
    return add({
      ...way,
      onPasteCells: (from, to, cells, payload) =>
        `${payload.copyType}` === "CUT"
          ? { redos: [], undos: [] }
          : paste(from, to, cells, payload),
    });
  };
  grid.injector.get(SheetInterceptorService).interceptCommand({
    getMutations: (command) => {
      const workbook = workbookOf(grid);
      const seen = workbook?.getActiveSheet()?.getSheetId() ?? "";
      const change = isCut(command) && changeOf(command as EffectRefRangeParams, seen);
      const steps = workbook && change ? stepsOf(grid, workbook, change) : [];
      return {
        redos: steps.map(({ todo }) => todo),
        undos: steps.toReversed().flatMap(({ undo }) => undo),
      };
    },
  });
}

function stepsOf({ injector }: Grid, workbook: Workbook, change: Change): RuleStep[] {
  const unitId = workbook.getUnitId();
  const formats = injector.get(ConditionalFormattingRuleModel);
  const entryRules = injector.get(SheetDataValidationModel);
  const sheets = workbook.getSheets().map((sheet) => sheet.getSheetId());
  const follow = (sheetId: string, ranges: readonly IRange[], formulas: readonly string[]) =>
    followInGrid(workbook, sheetId, ranges.map(areaOf), formulas);
  const painted = sheets.flatMap((subUnitId) =>
    (formats.getSubunitRules(unitId, subUnitId) ?? []).map((rule, at, all) => {
      const cells = follow(subUnitId, rule.ranges, formulasOf(rule));
      return { on: { unitId, subUnitId }, rule, cells, after: all[at - 1]?.cfId };
    }),
  );
  const asked = sheets.flatMap((subUnitId) =>
    (entryRules.getRules(unitId, subUnitId) as ISheetDataValidationRule[]).map((rule) => {
      const { ranges, formula1 = "", formula2 = "" } = rule;
      return {
        on: { unitId, subUnitId },
        rule,
        cells: follow(subUnitId, ranges, [formula1, formula2]),
      };
    }),
  );
  return [
    // Undone, the first of them comes back first.
    ...becoming(painted.toReversed(), change, ({ on, rule, after }, now) =>
      formatSteps(on, rule, now, after),
    ),
    ...becoming(asked, change, ({ on, rule }, now) => entryRuleSteps(on, rule, now)),
  ];
}

/** A cell has the rules that came with it, of each kind. */
function becoming<Rule extends { readonly cells: FollowedInGrid }>(
  rules: readonly Rule[],
  change: Change,
  steps: (rule: Rule, now: readonly RuleInGrid[]) => RuleStep[],
): RuleStep[] {
  const own = rules.flatMap(({ cells }) => cells.own);
  const moved = makingRoom(change, own);
  return rules.flatMap((rule) => steps(rule, rule.cells.after(moved)));
}
