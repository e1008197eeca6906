/** Whether an entry is what its cell asks for, and what a list offers. */
import {
  DataValidationErrorStyle,
  type ICellData,
  type ISheetDataValidationRule,
  numfmt,
} from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/sheets";
import {
  DataValidationCustomFormulaService,
  SheetDataValidationModel,
} from "@univerjs/sheets-data-validation";
import type { CellPlace } from "../../engine/cell-place";
import { readValue } from "../../engine/read-cells";
import { isError, type Value } from "../../workbook/book";
import type { Comparison } from "../../workbook/sheet-rules";
import { type Grid, workbookOf } from "../grid/grid";
import { compares, holds, sameEntry } from "./compare-entry";
import { listAt } from "./lists-by-cell";

/** The selected cell; undefined where no cell is. */
export function selectedPlace({ injector }: Pick<Grid, "injector">): CellPlace | undefined {
  const sheet = workbookOf({ injector })?.getActiveSheet();
  const primary = injector.get(SheetsSelectionsService).getCurrentLastSelectionPrimaryCell();
  if (!sheet || !primary) return undefined;
  return { sheetId: sheet.getSheetId(), row: primary.actualRow, column: primary.actualColumn };
}

export interface Choice {
  readonly label: string;
  readonly value: number | string | boolean;
}

export function ruleAt(
  { injector }: Pick<Grid, "injector">,
  { sheetId, row, column }: CellPlace,
): ISheetDataValidationRule | undefined {
  const unitId = workbookOf({ injector })?.getUnitId() ?? "";
  return injector.get(SheetDataValidationModel).getRuleByLocation(unitId, sheetId, row, column) as
    | ISheetDataValidationRule
    | undefined;
}

/** What a list offers, each choice once; undefined where the cell has no list. */
export async function choicesAt(grid: Grid, place: CellPlace): Promise<Choice[] | undefined> {
  const rule = ruleAt(grid, place);
  if (rule?.type !== "list") return undefined;
  const { formula1 = "" } = rule;
  if (!formula1.startsWith("=")) return formula1.split(",").map((text) => typed(text.trim()));
  const choices = new Map<string, Choice>();
  for (const cell of await listAt(grid, rule, place)) {
    const value = readValue(cell);
    if (!cell || value === null || value === "" || isError(value)) continue;
    const label = labelOf(cell, value);
    if (!choices.has(label)) choices.set(label, { label, value });
  }
  return [...choices.values()];
}

/** A choice that is written in the rule is what a person would have typed. */
function typed(label: string): Choice {
  const number = label === "" ? Number.NaN : Number(label);
  return { label, value: Number.isNaN(number) ? label : number };
}

function labelOf({ s }: ICellData, value: number | string | boolean): string {
  const pattern = typeof s === "object" ? s?.n?.pattern : undefined;
  if (typeof value === "number" && pattern) return numfmt.format(pattern, value, { throws: false });
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value);
}

/** A rule that is not computed by then lets the entry stand: nobody waits for it any longer. */
const PATIENCE = 3000;

export const patience = () =>
  new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), PATIENCE));

/** What a rule says of a value that it does not want. */
export interface Breach {
  readonly sentence: string;
  /** The value may stand all the same. */
  readonly mild: boolean;
}

/** Undefined where no rule has anything to say. */
export async function breachOf(
  grid: Grid,
  place: CellPlace,
  value: Value,
): Promise<Breach | undefined> {
  const rule = ruleAt(grid, place);
  if (!rule?.showErrorMessage || rule.error === undefined) return undefined;
  const blank = value === null || value === "";
  const fits = blank ? (rule.allowBlank ?? true) : await accepts(grid, rule, place, value);
  if (fits) return undefined;
  return { sentence: rule.error, mild: rule.errorStyle !== DataValidationErrorStyle.STOP };
}

/** The sentence that refuses the value; undefined where it may stand. */
export async function refusalOf(
  grid: Grid,
  place: CellPlace,
  value: Value,
): Promise<string | undefined> {
  const breach = await breachOf(grid, place, value);
  return breach?.mild ? undefined : breach?.sentence;
}

async function accepts(
  grid: Grid,
  rule: ISheetDataValidationRule,
  place: CellPlace,
  value: Value,
): Promise<boolean> {
  if (rule.type === "list") {
    const choices = (await choicesAt(grid, place)) ?? [];
    return choices.length === 0 || choices.some((choice) => sameEntry(choice.value, value));
  }
  if (rule.type === "custom") return holds(await customResult(grid, rule, place));
  if (typeof value !== "number") return false;
  if (rule.type === "whole" && !Number.isInteger(value)) return false;
  if (rule.type === "date" && value < 0) return false;
  if (rule.operator === undefined) return true;
  const [from, to] = boundsOf(grid, rule, place);
  return compares[rule.operator as Comparison](value, from, to);
}

/** What the formula of the rule gives for the cell, the entry in it. */
async function customResult(
  { injector }: Grid,
  { uid }: ISheetDataValidationRule,
  { sheetId, row, column }: CellPlace,
): Promise<Value> {
  const unitId = workbookOf({ injector })?.getUnitId() ?? "";
  const formulas = injector.get(DataValidationCustomFormulaService);
  return readValue(
    (await formulas.getCellFormulaValue(unitId, sheetId, uid, row, column)) as ICellData,
  );
}

/** As they were last computed: whoever types on must not wait. */
function boundsOf(
  { injector }: Grid,
  { uid, formula1, formula2 }: ISheetDataValidationRule,
  { sheetId, row, column }: CellPlace,
): [Value, Value] {
  const cell = [workbookOf({ injector })?.getUnitId() ?? "", sheetId, uid, row, column] as const;
  const formulas = injector.get(DataValidationCustomFormulaService);
  const bound = (text: string | undefined, computed: () => unknown): Value => {
    if (text === undefined) return null;
    return text.startsWith("=") ? readValue(computed() as ICellData) : Number(text);
  };
  return [
    bound(formula1, () => formulas.getCellFormulaValueSync(...cell)),
    bound(formula2, () => formulas.getCellFormula2ValueSync(...cell)),
  ];
}
