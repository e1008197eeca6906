import type { Injector } from "@univerjs/core";
import type { EngineFormula } from "../executor";

/** A piece of a formula as the engine's lexer leaves it: a call with its arguments, or an argument with its pieces. */
interface Piece {
  getToken(): string;
  getChildren(): readonly (Piece | string)[];
}

/**
 * LET and LAMBDA whose own names the engine cannot tell from others (a name that a table or a defined name
 * has, or one given anew further inside) would end the whole calculation: they are #NAME? in their cell.
 */
export function mendLetNames(injector: Injector, formula: EngineFormula): void {
  const lexer = injector.get(formula.LexerTreeBuilder);
  const read = lexer.treeBuilder.bind(lexer);
  // Its types promise one kind of error; those who call it take any.
  const unknownName = formula.ErrorType.NAME as string as typeof formula.ErrorType.VALUE;
  lexer.treeBuilder = (...formulaAndNames) => {
    const tree = read(...formulaAndNames);
    if (tree === undefined || typeof tree === "string") return tree;
    return areNamesPlain(tree as Piece, new Set()) ? tree : unknownName;
  };
}

function areNamesPlain(piece: Piece, outer: ReadonlySet<string>): boolean {
  const children = piece.getChildren();
  const names = new Set(outer);
  for (const place of namePlaces(piece.getToken().trim().toUpperCase(), children.length)) {
    const name = nameIn(children[place]);
    if (name === undefined || outer.has(name)) return false;
    names.add(name);
  }
  return children.every((child) => typeof child === "string" || areNamesPlain(child, names));
}

/** LET(name, value, …, result); LAMBDA(name, …, result). */
function namePlaces(call: string, count: number): readonly number[] {
  const step = call === "LET" ? 2 : call === "LAMBDA" ? 1 : Number.POSITIVE_INFINITY;
  if (step > count) return [];
  return Array.from({ length: Math.ceil((count - 1) / step) }, (_, i) => i * step);
}

/** Values of a LAMBDA that is called at once are no names. */
const VALUES = "L_1";

function nameIn(child: Piece | string | undefined): string | undefined {
  if (child === undefined || typeof child === "string") return undefined;
  if (child.getToken() === VALUES) return "";
  const [name] = child.getChildren();
  return typeof name === "string" ? name.trim().toUpperCase() : undefined;
}
