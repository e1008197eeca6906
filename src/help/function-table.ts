import { byFamily } from "./families";
import type { FunctionReference } from "./reference";

const START = "<!-- functions: written by `npm run readme` from the declarations -->";
const END = "<!-- end of functions -->";

/** A text with the functions between its two marks written anew. */
export function withFunctionTable(text: string, functions: readonly FunctionReference[]): string {
  const start = text.indexOf(START);
  const end = text.indexOf(END);
  if (start < 0 || end < start) throw new Error("The text has no marks for the functions.");
  return `${text.slice(0, start)}${START}\n${table(functions)}\n${text.slice(end)}`;
}

/** One row a function, by family in the order of the work. */
function table(functions: readonly FunctionReference[]): string {
  return byFamily(functions)
    .map(({ id, title, functions: own }) => {
      const rows = own.map((one) => `| \`${one.id}\` | ${words(one)} | ${firstClause(one)} |`);
      return `**${id}**: ${title.toLowerCase()}\n\n| id | arguments | gives |\n|---|---|---|\n${rows.join("\n")}\n`;
    })
    .join("\n");
}

const words = ({ arguments: args }: FunctionReference) =>
  args.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ");

const firstClause = ({ description }: FunctionReference) =>
  (/^.*?[.:](?=\s|$)/.exec(description)?.[0] ?? description).replace(/[.:]$/, "");
