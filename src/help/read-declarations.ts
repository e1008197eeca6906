import ts from "typescript";
import {
  type ArgumentReference,
  type ExampleReference,
  type FunctionReference,
  NAMESPACE,
} from "./reference";
import { typeset } from "./typeset";

/** What was read from the declarations of one file, and what is missing in them. */
export interface Declarations {
  readonly functions: readonly FunctionReference[];
  readonly faults: readonly string[];
}

const REQUIRED_TAGS = ["returns", "equation", "range", "source", "example"];
const UNIT = /\[([^\]]+)\]/;

/** Reads the documented custom functions of a source file. */
export function readDeclarations(fileName: string, sourceText: string): Declarations {
  const source = ts.createSourceFile(fileName, sourceText, ts.ScriptTarget.Latest, true);
  const choices = readChoices(source);
  const functions: FunctionReference[] = [];
  const faults: string[] = [];
  for (const statement of source.statements) {
    if (!ts.isFunctionDeclaration(statement)) continue;
    const tags = readTags(statement);
    const id = tags.get("customfunction")?.[0];
    if (id === undefined) continue;
    for (const fault of missing(statement, tags)) faults.push(`${id}: ${fault}`);
    functions.push(describe(id, statement, tags, choices));
  }
  return { functions, faults };
}

type Tags = ReadonlyMap<string, readonly string[]>;

function readTags(node: ts.Node): Tags {
  const tags = new Map<string, string[]>();
  for (const tag of ts.getJSDocTags(node)) {
    if (ts.isJSDocParameterTag(tag)) continue;
    const name = tag.tagName.text.toLowerCase() === "return" ? "returns" : tag.tagName.text;
    const text = ts.getTextOfJSDocComment(tag.comment)?.replace(/\s*\n\s*/g, " ") ?? "";
    const list = tags.get(name.toLowerCase()) ?? [];
    list.push(text.trim());
    tags.set(name.toLowerCase(), list);
  }
  return tags;
}

function describe(
  id: string,
  declaration: ts.FunctionDeclaration,
  tags: Tags,
  choices: ReadonlyMap<string, readonly string[]>,
): FunctionReference {
  const first = (tag: string) => tags.get(tag)?.[0] ?? "";
  return {
    id,
    name: `${NAMESPACE}.${id}`,
    family: id.split(".")[0] as string,
    description: descriptionOf(declaration),
    arguments: declaredArguments(declaration).map((parameter) =>
      describeArgument(parameter, choices),
    ),
    returns: first("returns"),
    equation: first("equation"),
    mathml: typeset(first("equation")),
    range: first("range"),
    source: first("source"),
    words: first("words")
      .split(",")
      .map((word) => word.trim())
      .filter((word) => word !== ""),
    examples: (tags.get("example") ?? []).map(readExample),
  };
}

function descriptionOf(declaration: ts.FunctionDeclaration): string {
  const [comment] = ts.getJSDocCommentsAndTags(declaration).filter(ts.isJSDoc);
  return ts.getTextOfJSDocComment(comment?.comment)?.replace(/\s*\n\s*/g, " ") ?? "";
}

/** The invocation, last in every declaration, is the host's and no argument of the formula. */
function declaredArguments(declaration: ts.FunctionDeclaration): ts.ParameterDeclaration[] {
  return declaration.parameters.filter(
    (parameter) => parameter.type?.getText() !== "CustomFunctions.Invocation",
  );
}

function describeArgument(
  parameter: ts.ParameterDeclaration,
  choices: ReadonlyMap<string, readonly string[]>,
): ArgumentReference {
  const [tag] = ts.getJSDocParameterTags(parameter);
  const description =
    ts
      .getTextOfJSDocComment(tag?.comment)
      ?.replace(/\s*\n\s*/g, " ")
      .replace(/^-\s*/, "") ?? "";
  const options = choices.get(parameter.type?.getText() ?? "");
  return {
    name: parameter.name.getText(),
    description,
    unit: UNIT.exec(description)?.[1] ?? "",
    optional: tag?.isBracketed ?? false,
    ...(options === undefined ? {} : { choices: options }),
  };
}

/** The texts of each enumeration that a drop-down is made from. */
function readChoices(source: ts.SourceFile): ReadonlyMap<string, readonly string[]> {
  return new Map(
    source.statements
      .filter(ts.isEnumDeclaration)
      .map((declaration) => [
        declaration.name.text,
        declaration.members.flatMap(({ initializer }) =>
          initializer !== undefined && ts.isStringLiteral(initializer) ? [initializer.text] : [],
        ),
      ]),
  );
}

function readExample(text: string): ExampleReference {
  const [formula = "", answer = ""] = text.split("→").map((part) => part.trim());
  return { formula, answer };
}

function missing(declaration: ts.FunctionDeclaration, tags: Tags): string[] {
  const faults: string[] = [];
  if (descriptionOf(declaration) === "") faults.push("has no description");
  for (const tag of REQUIRED_TAGS) {
    if ((tags.get(tag)?.[0] ?? "") === "") faults.push(`has no @${tag}`);
  }
  if (!UNIT.test(tags.get("returns")?.[0] ?? "")) faults.push("@returns has no unit in brackets");
  for (const parameter of declaredArguments(declaration)) {
    const { name, description, unit } = describeArgument(parameter, new Map());
    if (description === "") faults.push(`argument ${name} has no description`);
    else if (unit === "") faults.push(`argument ${name} has no unit in brackets`);
  }
  for (const example of tags.get("example") ?? []) {
    if (!/^=.+→.+/.test(example))
      faults.push(`the example "${example}" is not "=formula → answer"`);
  }
  return faults;
}
