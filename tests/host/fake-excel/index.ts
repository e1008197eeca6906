import { Context } from "./batch";
import type { FakeWorkbook } from "./state";

export { FakeExcelError, FakeWorkbook } from "./state";

type Batch = (context: Context) => Promise<unknown>;

/** `Excel` over a workbook in memory. */
export const fakeExcel = (fake: FakeWorkbook) => ({
  run: (...given: [unknown, Batch] | [Batch]) => {
    const batch = given.at(-1) as Batch;
    fake.runs.push(given.length === 1 ? undefined : given[0]);
    return batch(new Context(fake));
  },
  CustomFunctionManager: { setVisibility: () => undefined },
  createWorkbook: (base64: string) => {
    const context = new Context(fake);
    context.application.createWorkbook(base64).open();
    return context.sync();
  },
});

export interface FakeOffice {
  /** The newest ExcelApi set, and the other sets that are there. */
  readonly api?: number;
  readonly sets?: readonly string[];
  readonly theme?: string;
  /** The bytes that the workbook's file has; undefined where Excel refuses it. */
  readonly file?: Uint8Array;
  /** How many bytes Excel hands over at a time. */
  readonly slice?: number;
}

/** `Office` around it. */
export function fakeOffice({
  api = 20,
  sets = ["SharedRuntime", "CompressedFile"],
  theme,
  file,
  slice = 4_194_304,
}: FakeOffice = {}) {
  let startup = "none";
  const supported = (set: string, version = "1.1") =>
    set === "ExcelApi" ? Number(version.split(".")[1]) <= api : sets.includes(set);
  const done = (value: unknown, callback: (result: unknown) => void) =>
    callback(
      file === undefined
        ? { status: "failed", error: { message: "An internal error has occurred." } }
        : { status: "succeeded", value },
    );
  const state = { closed: 0 };
  return {
    state,
    AsyncResultStatus: { Succeeded: "succeeded", Failed: "failed" },
    FileType: { Compressed: "compressed" },
    StartupBehavior: { load: "load", none: "none" },
    addin: {
      getStartupBehavior: async () => startup,
      setStartupBehavior: async (next: string) => {
        startup = next;
      },
    },
    context: {
      requirements: { isSetSupported: supported },
      ...(theme === undefined ? {} : { officeTheme: { bodyBackgroundColor: theme } }),
      document: {
        getFileAsync: (_: string, __: unknown, callback: (result: unknown) => void) => {
          const size = file?.length ?? 0;
          done(
            {
              size,
              sliceCount: Math.ceil(size / slice),
              closeAsync: () => {
                state.closed += 1;
              },
              getSliceAsync: (index: number, answer: (result: unknown) => void) => {
                const data = [...(file ?? []).slice(index * slice, (index + 1) * slice)];
                done({ data, size: data.length, index }, answer);
              },
            },
            callback,
          );
        },
      },
    },
  };
}
