import path from "node:path";
import { createFsFromVolume, Volume } from "memfs";
import webpack from "webpack";
import configurations from "../../webpack.config";
import type { FunctionReference } from "../help/reference";

/** The functions as a host gets them. */
export interface BuiltFunctions {
  /** functions.js: the text of the script. */
  readonly code: string;
  /** functions.json: what the host is told of each function. */
  readonly metadata: FunctionsMetadata;
  readonly reference: readonly FunctionReference[];
  /** The static pages of help, by file name. */
  readonly help: Readonly<Record<string, string>>;
}

export interface FunctionsMetadata {
  readonly functions: readonly FunctionMetadata[];
  readonly enums?: readonly { readonly id: string; readonly values: readonly unknown[] }[];
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description: string;
    readonly dimensionality?: "matrix";
    readonly optional?: boolean;
    readonly type?: string;
    readonly customEnumId?: string;
  }[];
}

/** Builds the functions in memory: what runs is always what the sources say, and no folder is written. */
export async function buildFunctions(): Promise<BuiltFunctions> {
  const configuration = configurations().find(({ name }) => name === "functions");
  const compiler = webpack({ ...configuration, devtool: false } as webpack.Configuration);
  if (compiler === null) throw new Error("The build of the functions has no configuration.");
  const volume = new Volume();
  compiler.outputFileSystem = createFsFromVolume(volume) as unknown as webpack.OutputFileSystem;
  const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) => {
    compiler.run((problem, result) => (problem === null ? resolve(result) : reject(problem)));
  });
  const folder = compiler.outputPath;
  await new Promise<void>((resolve) => compiler.close(() => resolve()));
  if (stats === undefined || stats.hasErrors()) {
    throw new Error(stats?.toString({ all: false, errors: true }) ?? "The build gave no result.");
  }
  const read = (name: string) => volume.readFileSync(path.join(folder, name), "utf8") as string;
  return {
    code: read("functions.js"),
    metadata: JSON.parse(read("functions.json")),
    reference: JSON.parse(read("reference.json")),
    help: Object.fromEntries(
      (volume.readdirSync(path.join(folder, "help")) as string[]).map((name) => [
        name,
        read(`help/${name}`),
      ]),
    ),
  };
}
