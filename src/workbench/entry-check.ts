/** Whether an entry is what its cell asks for, and what a list offers. */
import { type ICellData, type ISheetDataValidationRule, numfmt } from "@univerjs/core";
import {
  DataValidationCustomFormulaService,
  DataValidationFormulaService,
  SheetDataValidationModel,
} from "@univerjs/sheets-data-validation";
import { readValue } from "../engine/read-cells";
import { isError, type Value } from "../workbook/book";
import type { Comparison } from "../workbook/sheet-rules";
import { type Grid, workbookOf } from "./grid";

export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export const samePlace = (one: CellPlace, other: CellPlace) =>
  one.sheetId === other.sheetId && one.row === other.row && one.column === other.column;

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
  const { injector } = grid;
  const unitId = workbookOf(grid)?.getUnitId() ?? "";
  const results = await injector
    .get(DataValidationFormulaService)
    .getRuleFormulaResult(unitId, place.sheetId, rule.uid);
  const cells = (results?.[0]?.result?.[0]?.[0] ?? []) as readonly (readonly ICellData[])[];
  const choices = new Map<string, Choice>();
  for (const cell of cells.flat()) {
    const value = readValue(cell);
    if (value === null || value === "" || isError(value)) continue;
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

/** The sentence that refuses the value; undefined where it may stand. */
export async function refusalOf(
  grid: Grid,
  place: CellPlace,
  value: Value,
): Promise<string | undefined> {
  const rule = ruleAt(grid, place);
  if (!rule?.showErrorMessage || rule.error === undefined) return undefined;
  const blank = value === null || value === "";
  const fits = blank ? (rule.allowBlank ?? true) : await accepts(grid, rule, place, value);
  return fits ? undefined : rule.error;
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
  if (rule.type === "custom") return holds(await boundAt(grid, rule, place, "formula1"));
  if (typeof value !== "number") return false;
  if (rule.type === "whole" && !Number.isInteger(value)) return false;
  if (rule.type === "date" && value < 0) return false;
  if (rule.operator === undefined) return true;
  const from = await boundAt(grid, rule, place, "formula1");
  const to = await boundAt(grid, rule, place, "formula2");
  return compares[rule.operator as Comparison](value, from, to);
}

const sameEntry = (choice: Value, entry: Value) =>
  typeof choice === "string" && typeof entry === "string"
    ? choice.toLowerCase() === entry.toLowerCase()
    : choice === entry;

/** A formula that gives an error forbids, as does 0; a text does not say no. */
const holds = (value: Value) => !isError(value) && value !== false && value !== 0;

/** A bound that is no number (its cell fails, or holds a word) bounds nothing; a blank one counts as 0. */
const number = (bound: Value, otherwise: number) =>
  typeof bound === "number" ? bound : bound === null ? 0 : otherwise;

const within = (value: number, from: Value, to: Value) =>
  value >= number(from, -Infinity) && value <= number(to, Infinity);

const compares: Record<Comparison, (value: number, from: Value, to: Value) => boolean> = {
  between: within,
  notBetween: (value, from, to) => value < number(from, Infinity) || value > number(to, -Infinity),
  equal: (value, from) => value === number(from, value),
  notEqual: (value, from) => value !== number(from, Number.NaN),
  greaterThan: (value, from) => value > number(from, -Infinity),
  greaterThanOrEqual: (value, from) => value >= number(from, -Infinity),
  lessThan: (value, from) => value < number(from, Infinity),
  lessThanOrEqual: (value, from) => value <= number(from, Infinity),
};

async function boundAt(
  { injector }: Grid,
  rule: ISheetDataValidationRule,
  { sheetId, row, column }: CellPlace,
  which: "formula1" | "formula2",
): Promise<Value> {
  const text = rule[which];
  if (text === undefined) return null;
  if (!text.startsWith("=")) return Number(text);
  const unitId = workbookOf({ injector })?.getUnitId() ?? "";
  const formulas = injector.get(DataValidationCustomFormulaService);
  const cell =
    which === "formula1"
      ? formulas.getCellFormulaValue(unitId, sheetId, rule.uid, row, column)
      : formulas.getCellFormula2Value(unitId, sheetId, rule.uid, row, column);
  return readValue((await cell) as ICellData);
}
