import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { buildFunctions } from "../build/built-functions";
import { withFunctionTable } from "../help/function-table";

/** `npm run readme`: writes the table of functions in README.md anew from the declarations. */
const file = path.join(import.meta.dirname, "../../README.md");
const { reference } = await buildFunctions();
const text = await readFile(file, "utf8");
await writeFile(file, withFunctionTable(text, reference));
