import { parentPort, workerData } from "node:worker_threads";
import { openEngine } from "../../engine/node";
import { functionNames } from "../../workbook/formula/stored-form";
import type { Task } from "./bounded";
import { recalculate } from "./recalculate";
import { changeable } from "./unread";

/** The other side of bounded.ts: computes one book and hands it back. */
const { functions, book, all } = workerData as Task;
const names = functionNames(functions.metadata.functions.map(({ id }) => id));
const result = await recalculate(book, openEngine(functions), names, { all });
parentPort?.postMessage({ ...result, book: changeable(result.book) });
