import type { Injector } from "@univerjs/core";
import type {
  BaseFunction,
  BaseReferenceObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import { hull } from "../../workbook/areas";
import type { EngineFormula } from "../executor";
import { areaOf, rangeOf } from "../ranges";

/** A node of a formula that is read; what is used of it here its types call private. */
interface Node {
  readonly nodeType: number;
  getChildren(): readonly Node[];
}
interface Union extends Node {
  _unionFunction(one: FunctionVariantType, other: FunctionVariantType): FunctionVariantType;
}
interface Unions {
  create(sign: string): Union;
}

/** A piece of its text: a call with its arguments. */
interface Piece {
  getToken(): string;
  getChildren(): readonly unknown[];
}
interface Calls {
  create(name: string): Node;
  checkAndCreateNodeType(piece: Piece | string): Node | undefined;
}

interface Dependencies {
  _nodeTraversalRef(node: Node, found: Node[]): void;
}

const UNION = 10;

/**
 * Ranges between two calls that give cells, INDEX(…):XLOOKUP(…). The engine joins single cells only, takes IF(…)
 * beside a colon for the column IF, and does not see which cells such a call reads: its answer would be that of
 * the cells as they were before.
 */
export function mendRanges(injector: Injector, formula: EngineFormula): void {
  const unions = injector.get(formula.UnionNodeFactory) as unknown as Unions;
  const create = unions.create.bind(unions);
  const maker: BaseFunction = new formula.BaseFunction("RANGE");
  unions.create = (sign) => {
    const union = create(sign);
    const join = union._unionFunction.bind(union);
    union._unionFunction = (one, other) =>
      areAlike(one, other) ? join(one, other) : joined(formula, maker, one, other);
    return union;
  };

  const calls = injector.get(formula.FunctionNodeFactory) as unknown as Calls;
  const nodeOf = calls.checkAndCreateNodeType.bind(calls);
  const functions = injector.get(formula.IFunctionService);
  calls.checkAndCreateNodeType = (piece) => {
    const node = nodeOf(piece);
    if (node || typeof piece === "string" || piece.getChildren().length === 0) return node;
    const name = piece.getToken().trim().toUpperCase();
    return functions.hasExecutor(name) ? calls.create(name) : node;
  };

  const dependencies = injector.get(formula.IFormulaDependencyGenerator) as unknown as Dependencies;
  const gather = dependencies._nodeTraversalRef.bind(dependencies);
  dependencies._nodeTraversalRef = (node, found) => {
    gather(node, found);
    for (const union of node.getChildren())
      if (union.nodeType === UNION)
        for (const end of union.getChildren()) dependencies._nodeTraversalRef(end, found);
  };
}

/** Ends that the engine joins itself: two cells, rows or columns as they are written. */
function areAlike(one: FunctionVariantType, other: FunctionVariantType): boolean {
  if (!one.isReferenceObject() || !other.isReferenceObject()) return false;
  const [first, last] = [one, other] as [BaseReferenceObject, BaseReferenceObject];
  return (
    (first.isCell() && last.isCell()) ||
    (first.isRow() && last.isRow()) ||
    (first.isColumn() && last.isColumn())
  );
}

/** The cells from one reference to another; on the sheet of the first, as Log!A1:B2 has it. */
function joined(
  formula: EngineFormula,
  maker: BaseFunction,
  one: FunctionVariantType,
  other: FunctionVariantType,
): FunctionVariantType {
  const failed = [one, other].find((end) => end.isError());
  if (failed) return failed;
  if (!one.isReferenceObject() || !other.isReferenceObject())
    return formula.ErrorValueObject.create(formula.ErrorType.REF);
  const [first, last] = [one, other] as [BaseReferenceObject, BaseReferenceObject];
  const area = hull([areaOf(first.getRangePosition()), areaOf(last.getRangePosition())]);
  maker.setRefInfo(first.getUnitId(), first.getSheetId(), -1, -1);
  const range = maker.createReferenceObject(first, rangeOf(area));
  if (range.isReferenceObject()) {
    const cells = range as BaseReferenceObject;
    cells.setForcedSheetIdDirect(first.getSheetId());
    cells.setArrayFormulaRange(first.getArrayFormulaRange());
    cells.setRuntimeArrayFormulaCellData(first.getRuntimeArrayFormulaCellData());
    cells.setRuntimeArrayFormulaRange(first.getRuntimeArrayFormulaRange());
    cells.setRuntimeFeatureCellData(first.getRuntimeFeatureCellData());
  }
  return range;
}
