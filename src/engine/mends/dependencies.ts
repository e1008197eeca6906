import type { Injector, IUnitRange } from "@univerjs/core";
import type { EngineFormula } from "../executor";

/** Cells that a formula reads. */
interface Read extends IUnitRange {
  readonly id: number;
}

/** Which formulas read a cell. */
interface Lookup {
  insert(read: Read): void;
  remove(read: Read): void;
  clear(): void;
}

/** The parts of the service that matter here; its types call some of them private. */
interface Dependencies {
  readonly _dependencyRTreeCache: Lookup;
  _removeDependencyRTreeCacheById(unitId: string, sheetId: string): void;
  addOtherFormulaDependency(...of: [string, string, string, { isCache: boolean }]): void;
}

/**
 * With each entry the engine looks up anew what all formulas read, and holds it once more. And where it forgets the
 * formulas of a sheet, as for each row that is put in, it holds on to what they read on other sheets, and logs an
 * error for each. Here all is held once, and forgotten whole: it is looked up again before it is needed.
 */
export function mendDependencies(injector: Injector, formula: EngineFormula): void {
  const service = injector.get(formula.IDependencyManagerService);
  const dependencies = service as unknown as Dependencies;
  const lookup = dependencies._dependencyRTreeCache;
  if (!lookup || !dependencies._removeDependencyRTreeCacheById)
    throw new Error(
      "The grid's engine finds who reads a cell in another way: see mends/dependencies.",
    );

  const held = new Map<number, Set<string>>();
  const { insert, remove, clear } = lookup;
  lookup.insert = (read) => {
    const { unitId, sheetId, range, id } = read;
    const { startRow, startColumn, endRow, endColumn } = range;
    const key = `${unitId} ${sheetId} ${startRow} ${startColumn} ${endRow} ${endColumn}`;
    const keys = held.get(id);
    if (keys?.has(key)) return;
    if (keys) keys.add(key);
    else held.set(id, new Set([key]));
    insert.call(lookup, read);
  };
  lookup.remove = (read) => {
    held.delete(read.id);
    remove.call(lookup, read);
  };
  lookup.clear = () => {
    held.clear();
    clear.call(lookup);
  };
  dependencies._removeDependencyRTreeCacheById = () => lookup.clear();

  // Formulas of rules the engine takes for held already.
  const addOther = dependencies.addOtherFormulaDependency.bind(dependencies);
  dependencies.addOtherFormulaDependency = (unitId, sheetId, id, tree) => {
    tree.isCache = false;
    addOther(unitId, sheetId, id, tree);
  };
}
