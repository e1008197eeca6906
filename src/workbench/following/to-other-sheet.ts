/**
 * Rules whose cells are cut and put on another sheet, or whose formulas name such cells. The grid follows a rule
 * on its own sheet only: there it would vanish, or stand at the same cells of the wrong sheet.
 */
import type { ISheetDataValidationRule, Workbook } from "@univerjs/core";
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
import { without } from "../../workbook/areas";
import type { Area } from "../../workbook/book";
import { type Grid, workbookOf } from "../grid/grid";
import type { Step } from "../grid/one-step";
import type { Change } from "./changes";
import { changeOf, followInGrid, type RuleInGrid } from "./grid-formulas";
import { entryRuleSteps, formatSteps, formulasOf, ruleMutations } from "./rule-steps";

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
        all.filter(({ id }) => !ruleMutations.has(id));
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
