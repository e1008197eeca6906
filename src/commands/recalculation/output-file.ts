import { randomUUID } from "node:crypto";
import { link, open, readFile, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import { refuseOtherFiles } from "../../workbook/package/file-kind";
import { usualLimits } from "../../workbook/package/limits";
import { WorkbookRefusal } from "../../workbook/workbook-refusal";

const codeOf = (problem: unknown) => (problem as NodeJS.ErrnoException).code ?? "";

/** Reads a file that somebody named; what stands in the way is said in a sentence. */
export async function readInput(file: string): Promise<Uint8Array> {
  try {
    const its = await stat(file);
    // A device or a pipe may never end.
    if (!its.isFile() && !its.isDirectory())
      throw new WorkbookRefusal(`${file} is no file. Give the path of a workbook.`);
    if (its.size > usualLimits.fileBytes)
      throw new WorkbookRefusal(
        `${file} is larger than ${usualLimits.fileBytes / 2 ** 20} MB, which is the most that is read.`,
      );
    const bytes = await readFile(file);
    refuseOtherFiles(bytes, usualLimits);
    return bytes;
  } catch (problem) {
    const sentences: Record<string, string> = {
      ENOENT: `${file} does not exist. Give the path of a workbook.`,
      ENOTDIR: `${file} does not exist. Give the path of a workbook.`,
      EISDIR: `${file} is a folder. Give the path of a workbook.`,
      EACCES: `${file} may not be read by this user.`,
      EPERM: `${file} may not be read by this user.`,
    };
    const sentence = sentences[codeOf(problem)];
    throw sentence === undefined ? refusalOf(file, problem) : new WorkbookRefusal(sentence);
  }
}

/** What is refused of a file begins with its name: a script may go through many. */
export function refusalOf(file: string, problem: unknown): unknown {
  if (!(problem instanceof WorkbookRefusal) || problem.message.startsWith(file)) return problem;
  return new WorkbookRefusal(`${file}: ${problem.message}`);
}

/** Beside the original: book.xlsx → book.recalculated.xlsx. */
export function outputBeside(file: string, ending: string): string {
  const { dir, name, ext } = path.parse(file);
  return path.join(dir, `${name}.${ending}${ext}`);
}

/** Refuses an output that would harm something, before any work is done. */
export async function checkOutput(input: string, output: string): Promise<void> {
  const [from, to] = [input, output].map((file) => path.extname(file).toLowerCase());
  if (from !== to)
    throw new WorkbookRefusal(
      `Give --out a name that ends in ${from}, as the workbook does: ${output}`,
    );
  if (await exists(output))
    throw new WorkbookRefusal(
      `${output} exists already and is not overwritten: remove it, or give another name with --out.`,
    );
  const folder = path.dirname(path.resolve(output));
  const isFolder = await stat(folder).then(
    (its) => its.isDirectory(),
    () => false,
  );
  if (!isFolder) throw new WorkbookRefusal(`There is no folder ${folder} to write into.`);
}

const exists = (file: string) =>
  stat(file).then(
    () => true,
    () => false,
  );

/** Gives a finished file its name, unless another has got it meanwhile. */
async function giveName(temporary: string, output: string): Promise<void> {
  try {
    await link(temporary, output);
    await rm(temporary);
  } catch (problem) {
    if (codeOf(problem) === "EEXIST" || (await exists(output)))
      throw new WorkbookRefusal(`${output} exists already and is not overwritten.`);
    // Some file systems have no links.
    await rename(temporary, output);
  }
}

/** Writes beside and renames, so that a crash or a full disk leaves nothing half written under the name. */
export async function writeOutput(output: string, bytes: Uint8Array): Promise<void> {
  const temporary = path.join(path.dirname(output), `.${path.basename(output)}.${randomUUID()}`);
  try {
    const handle = await open(temporary, "wx");
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await giveName(temporary, output);
  } catch (problem) {
    await rm(temporary, { force: true });
    const sentences: Record<string, string> = {
      EACCES: `${output} may not be written by this user.`,
      EPERM: `${output} may not be written by this user.`,
      ENOENT: `${output} cannot be written there.`,
      EROFS: `${output} is on a disk that cannot be written.`,
      ENOSPC: `The disk is full: ${output} was not written.`,
      EDQUOT: `There is no room left for this user: ${output} was not written.`,
      EFBIG: `${output} would be larger than this user may write: it was not written.`,
    };
    const sentence = sentences[codeOf(problem)];
    throw sentence === undefined ? problem : new WorkbookRefusal(sentence);
  }
}
