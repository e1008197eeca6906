import { Worker } from "node:worker_threads";
import type { BuiltFunctions } from "../../build/built-functions";
import type { Book } from "../../workbook/book";
import { WorkbookRefusal } from "../../workbook/workbook-refusal";
import type { Recalculated } from "./recalculate";
import { completed, withoutUnread } from "./unread";

export interface Task {
  readonly functions: Pick<BuiltFunctions, "code" | "metadata">;
  readonly book: Book;
  readonly all: boolean;
}

export interface Bounds {
  readonly minutes: number;
  readonly megabytes: number;
}

/** Ten thousand formulas take seconds and some hundred megabytes; what goes beyond this was built to. */
const usualBounds: Bounds = { minutes: 15, megabytes: 4096 };

/** A thread does not inherit the loader of TypeScript that runs this file: it begins by loading it. */
const beginning = (file: URL): string => {
  const loader = import.meta.resolve("tsx/esm/api");
  return `import(${JSON.stringify(loader)}).then(({ register }) => {
    register();
    return import(${JSON.stringify(file.href)});
  });`;
};

/** What a file from outside can bring about, however sound the program is. */
function refusalOf(problem: NodeJS.ErrnoException, megabytes: number): string | undefined {
  if (problem.code === "ERR_WORKER_OUT_OF_MEMORY")
    return `The workbook takes more than ${megabytes} MB of memory to compute.`;
  if (/call stack/i.test(problem.message))
    return "A formula of the workbook goes deeper than can be computed.";
  return undefined;
}

/**
 * Computes in a thread of its own, which is stopped when it takes too long or too much: a workbook
 * from outside may hold formulas that no machine can finish.
 */
export function recalculateBounded(
  task: Task,
  { minutes, megabytes }: Bounds = usualBounds,
): Promise<Recalculated> {
  const worker = new Worker(beginning(new URL("./worker.ts", import.meta.url)), {
    eval: true,
    workerData: { ...task, book: withoutUnread(task.book) } satisfies Task,
    resourceLimits: { maxOldGenerationSizeMb: megabytes },
  });
  return new Promise((resolve, reject) => {
    const stop = setTimeout(() => {
      const limit = minutes === 1 ? "a minute" : `${minutes} minutes`;
      reject(new WorkbookRefusal(`The workbook takes longer than ${limit} to compute.`));
      worker.terminate();
    }, minutes * 60_000);
    worker.once("message", (result: Recalculated) =>
      resolve({ ...result, book: completed(result.book, task.book) }),
    );
    worker.once("error", (problem: NodeJS.ErrnoException) => {
      const sentence = refusalOf(problem, megabytes);
      reject(sentence === undefined ? problem : new WorkbookRefusal(sentence));
    });
    worker.once("exit", () => clearTimeout(stop));
  });
}
