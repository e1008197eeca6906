import type { Injector } from "@univerjs/core";
import type { EngineFormula } from "../executor";

/** The parts of the lexer that matter here; its types call them private. */
interface Lexer {
  _squareBracketState: number;
  _currentLexerNode: { getChildren(): readonly unknown[] };
  _resetTemp(): void;
  _formulaSpellCheck(): boolean;
  treeBuilder(text: string, transformSuffix?: unknown, names?: unknown): unknown;
}

/** As good as true, but what was read before is given for true alone. */
const ANEW = 1;

/**
 * The engine's lexer forgets to forget an open square bracket: a formula that was typed up to
 * "=SUM(Log[Do" would spoil the reading of the next one. And it allows an array in braces behind an
 * operator only where an array stands before it: 2*{1,2} would be no formula. And it remembers what it has
 * read by the text alone: with the cells that names stood for in the workbook of that time, and with the
 * marks that a calculation leaves on the names of a LET. So it reads anew; the engine remembers what it
 * makes of that, for each workbook.
 */
export function mendLexer(injector: Injector, formula: EngineFormula): void {
  const lexer = injector.get(formula.LexerTreeBuilder) as unknown as Lexer;
  if (!("_squareBracketState" in lexer && "_resetTemp" in lexer && "_formulaSpellCheck" in lexer))
    throw new Error("The grid's engine reads formulas in another way: see mends/lexer.");
  const reset = lexer._resetTemp.bind(lexer);
  lexer._resetTemp = () => {
    reset();
    lexer._squareBracketState = 0;
  };
  const mayOpenArray = lexer._formulaSpellCheck.bind(lexer);
  lexer._formulaSpellCheck = () => {
    const last = lexer._currentLexerNode.getChildren().at(-1);
    const behindOperator = typeof last === "string" && formula.OPERATOR_TOKEN_SET.has(last.trim());
    return behindOperator || mayOpenArray();
  };
  const read = lexer.treeBuilder.bind(lexer);
  lexer.treeBuilder = (text, transformSuffix = true, names) =>
    read(text, transformSuffix && ANEW, names);
}
