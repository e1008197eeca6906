/**
 * The formula of a list is written for the first cell of its rule, as that of any other rule (ECMA-376 Part 1,
 * 18.3.1.32). The grid takes it for that of all cells, and lets it follow as such.
 */
import type { ICellData, ISheetDataValidationRule, Nullable } from "@univerjs/core";
import { DataValidatorRegistryService } from "@univerjs/data-validation";
import { RegisterOtherFormulaService } from "@univerjs/engine-formula";
import { DataValidationCustomFormulaService } from "@univerjs/sheets-data-validation";
import type { CellPlace } from "../../engine/cell-place";
import { shiftedFormula } from "../../workbook/formula/shared";
import { type Grid, workbookOf } from "../grid/grid";

/** Before the first workbook. */
export function followListsByCell(): void {
  const registry = DataValidatorRegistryService.prototype;
  const { getValidatorItem } = registry;
  registry.getValidatorItem = function (id) {
    const validator = getValidatorItem.call(this, id);
    if (id === "list" && validator) Object.assign(validator, { offsetFormulaByRange: true });
    return validator;
  };
  // A list is computed for a cell when it is asked for, not for all cells whenever something changes.
  const service = DataValidationCustomFormulaService.prototype;
  const { addRule } = service;
  service.addRule = function (unitId, sheetId, rule) {
    if (rule.type !== "list") addRule.call(this, unitId, sheetId, rule);
  };
}

/** The cells from which a list is taken at a cell. */
export async function listAt(
  { injector }: Grid,
  { ranges: [first], formula1 = "" }: ISheetDataValidationRule,
  { sheetId, row, column }: CellPlace,
): Promise<readonly Nullable<ICellData>[]> {
  const unitId = workbookOf({ injector })?.getUnitId() ?? "";
  const { startRow = row, startColumn = column } = first ?? {};
  const formula = shiftedFormula(formula1)(row - startRow, column - startColumn);
  const formulas = injector.get(RegisterOtherFormulaService);
  const id = formulas.registerFormulaWithRange(unitId, sheetId, formula);
  const computed = await formulas.getFormulaValue(unitId, sheetId, id);
  formulas.deleteFormula(unitId, sheetId, [id]);
  return computed?.result?.[0]?.[0]?.flat() ?? [];
}
