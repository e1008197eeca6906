import type { Injector } from "@univerjs/core";
import type { EngineFormula } from "./executor";

/** The parts of the lexer that matter here; its types call them private. */
interface LexerState {
  _squareBracketState: number;
  _resetTemp(): void;
}

/**
 * The engine's lexer forgets to forget an open square bracket: a formula that was typed up to
 * "=SUM(Log[Do" would spoil the reading of the next one.
 */
export function mendLexer(injector: Injector, formula: EngineFormula): void {
  const lexer = injector.get(formula.LexerTreeBuilder) as unknown as LexerState;
  const reset = lexer._resetTemp.bind(lexer);
  lexer._resetTemp = () => {
    reset();
    lexer._squareBracketState = 0;
  };
}
