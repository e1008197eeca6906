import { parseArgs } from "node:util";
import { VERSION } from "../library/version";
import { functionNames } from "../workbook/formula/stored-form";
import { editsBetween } from "../workbook/patch/edits";
import { patchWorkbook } from "../workbook/patch/patch-workbook";
import { readWorkbook } from "../workbook/read/read-workbook";
import { valuesOnly } from "../workbook/values-only";
import { WorkbookRefusal } from "../workbook/workbook-refusal";
import { recalculateBounded } from "./recalculation/bounded";
import {
  checkOutput,
  outputBeside,
  readInput,
  refusalOf,
  writeOutput,
} from "./recalculation/output-file";
import { exitCodeOf, exitCodes, printable, reportOf } from "./recalculation/report";

const help = `npm run recalc -- book.xlsx [--out file.xlsx] [--all] [--values]

Computes the Dosewright formulas of a workbook and writes the values into a new file.
The workbook itself is never changed, and no file is overwritten.

  --out file.xlsx  where to write; without it, book.recalculated.xlsx beside the workbook
  --all            computes the native formulas anew, too. Without it a native formula is
                   written only where it has no value yet or depends on a changed cell
  --values         writes a copy for a colleague without the add-in: values in place of
                   the Dosewright formulas, and a sheet that says which; without --out,
                   book.values.xlsx
  --help           this text

Ends with 0 where all is well, 1 where a Dosewright cell shows an error (each is printed with
its message), 2 where nothing was written (the reason is printed), 3 where native formulas come
out here otherwise than the file holds: they keep their values and are printed.`;

interface Options {
  readonly input: string;
  readonly output: string;
  readonly all: boolean;
  readonly values: boolean;
}

function optionsOf(argv: readonly string[]): Options | "help" {
  const options = {
    out: { type: "string" },
    all: { type: "boolean", default: false },
    values: { type: "boolean", default: false },
    help: { type: "boolean", default: false },
  } as const;
  let parsed: ReturnType<typeof parseArgs<{ options: typeof options; allowPositionals: true }>>;
  try {
    parsed = parseArgs({ args: [...argv], options, allowPositionals: true });
  } catch (problem) {
    // Node's first sentence says what is wrong; the rest is about names that begin with a dash.
    const [what] = (problem as Error).message.split(". ");
    throw new WorkbookRefusal(`${what?.replace(/\.$/, "")}. Try --help.`);
  }
  const { values, positionals } = parsed;
  const [input] = positionals;
  if (values.help) return "help";
  if (input === undefined) throw new WorkbookRefusal("Give the name of one workbook. Try --help.");
  if (positionals.length > 1)
    throw new WorkbookRefusal(
      `The names given are ${positionals.join(" and ")}. Give one workbook; the name to write goes after --out. Try --help.`,
    );
  const output = values.out ?? outputBeside(input, values.values ? "values" : "recalculated");
  return { input, output, all: values.all, values: values.values };
}

async function run({ input, output, all, values }: Options): Promise<number> {
  await checkOutput(input, output);
  const bytes = await readInput(input);
  // The heavy part comes last: what is refused is refused at once.
  const { buildFunctions } = await import("../build/built-functions");
  const functions = await buildFunctions();
  const names = functionNames(functions.metadata.functions.map(({ id }) => id));
  const opened = await readWorkbook(bytes, names).catch((problem) => {
    throw refusalOf(input, problem);
  });
  const { code, metadata } = functions;
  const result = await recalculateBounded({
    functions: { code, metadata },
    book: opened.book,
    all,
  });
  const edits = editsBetween(opened.book, result.book);
  const written = values
    ? await valuesOnly(opened, result.book, names, VERSION)
    : await patchWorkbook(opened, edits, names);
  await writeOutput(output, written.bytes);
  const changed = [...edits.values()]
    .flatMap((sheet) => [...sheet.values()])
    .reduce((sum, row) => sum + row.size, 0);
  for (const line of reportOf(result, changed, written.stale)) console.log(line);
  console.log(`Written: ${output}`);
  return exitCodeOf(result);
}

async function main(argv: readonly string[]): Promise<number> {
  try {
    const options = optionsOf(argv);
    if (options !== "help") return await run(options);
    console.log(help);
    return exitCodes.fine;
  } catch (problem) {
    // A fault of the program is shown whole, and is none of a cell: it does not end with 1.
    console.error(problem instanceof WorkbookRefusal ? printable(problem.message) : problem);
    return exitCodes.refused;
  }
}

process.exitCode = await main(process.argv.slice(2));
