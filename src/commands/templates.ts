import { writeFile } from "node:fs/promises";
import path from "node:path";
import { plans } from "../../templates/plans";
import { buildFunctions } from "../build/built-functions";
import { openEngine } from "../engine/node";
import { functionNames } from "../workbook/formula/stored-form";
import { layOut } from "../workbook/layout/lay-out";
import { writeWorkbook } from "../workbook/write/write-workbook";

/** `npm run templates`: builds the .xlsx of every plan, with the values that the engine computes. */
const folder = path.join(import.meta.dirname, "../../templates");
const functions = await buildFunctions();
const engine = openEngine(functions);
const names = functionNames(functions.metadata.functions.map(({ id }) => id));

for (const plan of plans) {
  const planned = layOut(plan);
  const { book, failures } = await engine.recalculate(planned);
  for (const { sheet, address, formula, error, message = "" } of failures) {
    console.error(`${plan.id}: ${sheet}!${address} ${error} ${message} (=${formula})`);
    process.exitCode = 1;
  }
  const file = path.join(folder, `${plan.id}.xlsx`);
  await writeFile(file, await writeWorkbook({ ...planned, ...book }, names));
  console.log(`templates/${plan.id}.xlsx`);
}
