/**
 * Formulas of rules when rows or columns are inserted inside their ranges. The grid takes a line that is put
 * in before the first cell of a part of a range into that part, and yet moves the part's formula along: from
 * there on every cell would be judged by its neighbour. Told that the line was put in behind the cell before,
 * it moves both.
 */
import { Direction, type IRange } from "@univerjs/core";
import type { EffectRefRangeParams, RefRangeService } from "@univerjs/sheets";
import { FormulaRefRangeService } from "@univerjs/sheets-formula";

type Follow = Parameters<RefRangeService["registerRefRange"]>[1];

const behind: Partial<Record<Direction, Direction>> = {
  [Direction.UP]: Direction.DOWN,
  [Direction.LEFT]: Direction.RIGHT,
};

function insertedBehind(command: EffectRefRangeParams): EffectRefRangeParams {
  const { params } = command as { params?: { range?: IRange; direction?: Direction } };
  const direction = params?.direction === undefined ? undefined : behind[params.direction];
  return direction === undefined
    ? command
    : ({ ...command, params: { ...params, direction } } as EffectRefRangeParams);
}

/** Before the first workbook. */
export function moveRulesWithTheirCells(): void {
  const register = FormulaRefRangeService.prototype.registerRangeFormula;
  FormulaRefRangeService.prototype.registerRangeFormula = function (...what) {
    const { _refRangeService: ranges } = this as unknown as { _refRangeService: RefRangeService };
    const registerRefRange = (range: IRange, follow: Follow, unitId: string, sheetId: string) =>
      ranges.registerRefRange(range, (command) => follow(insertedBehind(command)), unitId, sheetId);
    const told = Object.create(this, { _refRangeService: { value: { registerRefRange } } });
    return register.apply(told, what);
  };
}
