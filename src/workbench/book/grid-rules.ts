/**
 * Conditional formats and what may be typed, as the grid's packages take them: what a plan or a file says
 * becomes a resource of the workbook, which then follows its cells when rows and columns come and go.
 */
import {
  BooleanNumber,
  DataValidationErrorStyle,
  type IRange,
  type ISheetDataValidationRule,
  type IStyleData,
  type IWorkbookData,
} from "@univerjs/core";
import type {
  IConditionFormattingRule,
  IFormulaHighlightCell,
} from "@univerjs/sheets-conditional-formatting";
import { toGrid } from "../../engine/dialect";
import { areaOf, rangeOf } from "../../engine/ranges";
import { type Room, roomFor, sheetIdAt } from "../../engine/snapshot";
import { without } from "../../workbook/areas";
import type { Area, Book } from "../../workbook/book";
import { type ConditionalFormat, type EntryRule, wholeFormats } from "../../workbook/sheet-rules";
import { gridRanking } from "./grid-rankings";

// The packages' own words, as in their SHEET_CONDITIONAL_FORMATTING_PLUGIN, DATA_VALIDATION_PLUGIN_NAME,
// CFRuleType and CFSubRuleType: what puts a workbook together loads no package that draws.
const FORMATS = "SHEET_CONDITIONAL_FORMATTING_PLUGIN";
const ENTRY_RULES = "SHEET_DATA_VALIDATION_PLUGIN";
const BY_FORMULA = { type: "highlightCell", subType: "formula" } as Pick<
  IFormulaHighlightCell,
  "type" | "subType"
>;

/** A formula of a rule is computed for each of its cells: what a book may ask for in all its sheets. */
const MOST_CELLS = 10_000;

/** How far below what a sheet holds such formulas are computed. */
const SPARE_ROWS = 100;

export interface SheetRules {
  readonly formats: readonly IConditionFormattingRule[];
  readonly entryRules: readonly ISheetDataValidationRule[];
}

/** The rules of each sheet, in the order of the sheets. What would cost too much is left out. */
export function gridRules(book: Book): SheetRules[] {
  const room = roomFor(book);
  let left = MOST_CELLS;
  const affordable = (...ranges: readonly IRange[]) => {
    const cells = ranges.map(areaOf).reduce((sum, { rows, columns }) => sum + rows * columns, 0);
    if (cells > left) return false;
    left -= cells;
    return true;
  };
  return book.sheets.map((sheet, index) => {
    const rows = Number(Object.keys(sheet.cells).at(-1) ?? -1) + 1 + SPARE_ROWS;
    const filled = { ...room, rows: Math.min(rows, room.rows) };
    return {
      formats: wholeFormats(sheet.formats ?? []).flatMap(({ format, areas }, at) => {
        const ranges = areas.flatMap((area) => clipped(area, filled) ?? []);
        const rule = ranges.length > 0 && gridFormat(format, ranges.map(areaOf));
        if (!rule || !affordable(...ranges)) return [];
        const { stops = false } = format;
        const cfId = `format-${index}-${at}`;
        return [{ cfId, ranges: eachOnce(ranges), stopIfTrue: stops, rule }];
      }),
      entryRules: (sheet.entryRules ?? []).flatMap((rule, at) => {
        const range = clipped(rule.area, computes(rule) ? filled : room);
        return range && (!computes(rule) || affordable(range))
          ? [gridEntryRule(rule, range, `entry-${index}-${at}`)]
          : [];
      }),
    };
  });
}

export function ruleResources(book: Book): NonNullable<IWorkbookData["resources"]> {
  const rules = gridRules(book);
  const bySheet = (which: keyof SheetRules) =>
    JSON.stringify(Object.fromEntries(rules.map((sheet, at) => [sheetIdAt(at), sheet[which]])));
  return [
    { name: FORMATS, data: bySheet("formats") },
    { name: ENTRY_RULES, data: bySheet("entryRules") },
  ];
}

/** The same cells, those that several ranges have in the first of them only: the grid counts each as often as it comes. */
function eachOnce(ranges: readonly IRange[]): IRange[] {
  const areas: Area[] = [];
  for (const range of ranges) {
    const left = areas.reduce(
      (parts, known) => parts.flatMap((part) => without(part, known)),
      [areaOf(range)],
    );
    areas.push(...left);
  }
  return areas.map(rangeOf);
}

/** As far as the sheet goes in the grid. */
function clipped(area: Area, room: Room): IRange | undefined {
  if (area.row >= room.rows || area.column >= room.columns) return undefined;
  const range = rangeOf(area);
  const endRow = Math.min(range.endRow, room.rows - 1);
  return { ...range, endRow, endColumn: Math.min(range.endColumn, room.columns - 1) };
}

/** Whether the format makes a difference to what the grid paints. */
const shows = ({ look, stops }: ConditionalFormat): boolean =>
  Boolean(stops || look.bold || look.italic || (look.ink ?? look.fill) !== undefined);

function gridFormat(
  format: ConditionalFormat,
  areas: readonly Area[],
): IConditionFormattingRule["rule"] | undefined {
  const { look, formula, ranking } = format;
  const style: IStyleData = {
    ...(look.bold && { bl: BooleanNumber.TRUE }),
    ...(look.italic && { it: BooleanNumber.TRUE }),
    ...(look.ink !== undefined && { cl: { rgb: look.ink } }),
    ...(look.fill !== undefined && { bg: { rgb: look.fill } }),
  };
  if (ranking) return gridRanking(ranking, style, areas);
  if (formula === undefined || !shows(format)) return undefined;
  return { ...BY_FORMULA, value: toGrid(formula), style };
}

const isNumber = (formula: string) => formula.trim() !== "" && Number.isFinite(Number(formula));
const isText = (formula: string) => /^"(?:[^"]|"")*"$/.test(formula);

const styles = {
  stop: DataValidationErrorStyle.STOP,
  warning: DataValidationErrorStyle.WARNING,
  information: DataValidationErrorStyle.INFO,
} as const;

/** Lists have one formula for all their cells. */
const computes = ({ type, from, to }: EntryRule) =>
  type !== "list" && [from, to].some((formula) => formula !== undefined && !isNumber(formula));

const gridBound = (formula: string) => (isNumber(formula) ? formula : toGrid(formula));

function gridEntryRule(rule: EntryRule, range: IRange, uid: string): ISheetDataValidationRule {
  const { type, comparison, from, to, arrowHidden, blank, prompt, refusal } = rule;
  const choices =
    type === "list" && from !== undefined && isText(from)
      ? from.slice(1, -1).replaceAll('""', '"')
      : undefined;
  return {
    uid,
    ranges: [range],
    type,
    allowBlank: blank,
    ...(arrowHidden && { showDropDown: false }),
    errorStyle: styles[refusal?.mild ?? "stop"],
    showErrorMessage: refusal !== undefined,
    ...(comparison && { operator: comparison as never }),
    ...(from !== undefined && { formula1: choices ?? gridBound(from) }),
    ...(to !== undefined && { formula2: gridBound(to) }),
    ...(prompt && { prompt: prompt.text || (prompt.title ?? "") }),
    ...(refusal && { error: refusal.text }),
  };
}
