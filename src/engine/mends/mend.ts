/**
 * Makes the grid's formula engine compute as every spreadsheet does, in Node and in the browser. Each
 * mend says what it is for; tests/engine/spreadsheet.test.ts holds them all.
 */
import type { Injector } from "@univerjs/core";
import type { EngineFormula } from "../executor";
import { guarded, nativesOf } from "../natives/natives";
import { mendArrayConstants } from "./array-constants";
import { mendBlankLookups } from "./blank-lookups";
import { mendCells } from "./cells";
import { mendDependencies } from "./dependencies";
import { mendIndex } from "./index-of-columns";
import { mendLetNames } from "./let-names";
import { mendLexer } from "./lexer";
import { mendRanges } from "./ranges";
import { mendResults } from "./results";
import { mendSheetSize } from "./sheet-size";

const mended = new WeakSet<EngineFormula>();

export function mend(injector: Injector, formula: EngineFormula): void {
  if (!mended.has(formula)) mendForAll(formula);
  mended.add(formula);
  mendLexer(injector, formula);
  mendLetNames(injector, formula);
  mendResults(injector, formula);
  mendRanges(injector, formula);
  mendDependencies(injector, formula);
  mendFunctions(injector, formula);
}

/** What serves every calculation of the program is mended once. */
function mendForAll(formula: EngineFormula): void {
  mendIndex(formula);
  mendCells(formula);
  mendArrayConstants(formula);
  mendBlankLookups(formula);
  mendSheetSize(formula);
}

/** The engine registers its own functions when its first workbook is made: ours stand before and after that. */
function mendFunctions(injector: Injector, formula: EngineFormula): void {
  const functions = injector.get(formula.IFunctionService);
  const natives = new Map(
    nativesOf(formula).map((native) => [native.name, guarded(formula, native)]),
  );
  const register = functions.registerExecutors.bind(functions);
  functions.registerExecutors = (...executors) =>
    register(...executors.map((one) => natives.get(one.name) ?? guarded(formula, one)));
  functions.registerExecutors(...functions.getExecutors().values(), ...natives.values());
}
