import vm from "node:vm";
import { gzipSync } from "node:zlib";
import { built } from "./bundle";
import { type Measured, medianTime } from "./measure";

const KILOBYTE = 1024;

/** What every workbook pays when it opens: the bytes of the functions, and running them once. */
export function start(): Measured[] {
  const script = new vm.Script(built.code);
  const CustomFunctions = { associate() {}, Error: class {}, ErrorCode: {} };
  return [
    {
      work: "functions.js, gzip",
      measured: gzipSync(built.code, { level: 9 }).length / KILOBYTE,
      limit: 48,
      unit: "KB",
      note: `${built.metadata.functions.length} functions, library data included`,
    },
    {
      work: "functions.js, run once in a bare engine",
      measured: medianTime(() => script.runInContext(vm.createContext({ CustomFunctions }))),
      limit: 20,
      unit: "ms",
      note: "a new global object each time",
    },
  ];
}
