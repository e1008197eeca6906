import { readFileSync } from "node:fs";
import type { Compiler } from "webpack";
import { readDeclarations } from "../help/read-declarations";
import { type FunctionReference, NAMESPACE } from "../help/reference";

const METADATA = "functions.json";
/** The file that holds the words about the functions. */
export const REFERENCE = "reference.json";

/** The limits that the platform sets to ids and texts. */
const ID = /^[A-Z][A-Z0-9_.]{2,63}$/;
const LONGEST_DESCRIPTION = 1024;
const LONGEST_ARGUMENT_DESCRIPTION = 512;

interface Metadata {
  allowErrorForDataTypeAny?: boolean;
  functions: {
    id: string;
    helpUrl?: string;
    description?: string;
    parameters: { name: string; description?: string }[];
  }[];
  enums?: { id: string }[];
}

export interface FunctionTablesOptions {
  /** The declaring files. */
  readonly files: readonly string[];
  /** Where the add-in is served from: help links need a whole address. */
  readonly origin: string;
  /** What goes before a function's name in this build. */
  readonly namespace: string;
}

/**
 * Completes the metadata that the platform's own plugin generates (errors in ranges reach the functions,
 * help links, enumerations once each), writes the reference, and fails the build on any fault.
 */
export class FunctionTables {
  constructor(private readonly options: FunctionTablesOptions) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("FunctionTables", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "FunctionTables", stage }, () => {
        const asset = compilation.getAsset(METADATA);
        if (asset === undefined) return;
        const metadata = JSON.parse(asset.source.source().toString()) as Metadata;
        const declarations = this.options.files.map((file) => {
          compilation.fileDependencies.add(file);
          return readDeclarations(file, readFileSync(file, "utf8"));
        });
        const reference = declarations.flatMap(({ functions }) => functions);
        const faults = [
          ...declarations.flatMap((one) => one.faults),
          ...faultsOf(metadata, reference),
        ];
        for (const fault of faults)
          compilation.errors.push(new compiler.webpack.WebpackError(fault));
        const { origin, namespace } = this.options;
        // The declarations speak of the usual namespace; what is said of this build names its own.
        const json = (value: unknown) =>
          new compiler.webpack.sources.RawSource(
            `${JSON.stringify(value, null, 1).replaceAll(`${NAMESPACE}.`, `${namespace}.`)}\n`,
          );
        compilation.updateAsset(METADATA, json(complete(metadata, origin)));
        compilation.emitAsset(REFERENCE, json(reference));
      });
    });
  }
}

function complete(metadata: Metadata, origin: string): Metadata {
  const enums = new Map((metadata.enums ?? []).map((one) => [one.id, one]));
  return {
    ...metadata,
    allowErrorForDataTypeAny: true,
    functions: metadata.functions.map((one) => ({
      ...one,
      helpUrl: `${origin}/help/${one.id.toLowerCase()}.html`,
      description: oneLine(one.description),
      parameters: one.parameters.map((parameter) => ({
        ...parameter,
        description: oneLine(parameter.description),
      })),
    })),
    ...(enums.size === 0 ? {} : { enums: [...enums.values()] }),
  };
}

/** The generator keeps the line ends of the comment; a drop-down shows one line. */
const oneLine = (text = "") => text.replace(/\s*\n\s*/g, " ").trim();

/** A saved workbook writes dots as underscores: two ids that differ in nothing else cannot be told apart. */
const savedForm = (id: string) => id.replaceAll(".", "_").toUpperCase();

function faultsOf(metadata: Metadata, reference: readonly FunctionReference[]): string[] {
  const faults: string[] = [];
  const seen = new Map<string, string>();
  for (const { id, description = "", parameters } of metadata.functions) {
    const earlier = seen.get(savedForm(id));
    if (earlier !== undefined) faults.push(`${id}: collides with ${earlier}`);
    seen.set(savedForm(id), id);
    if (!ID.test(id))
      faults.push(`${id}: not an id of 3 to 64 capitals, digits, dots, underscores`);
    if (description.length > LONGEST_DESCRIPTION) faults.push(`${id}: description too long`);
    for (const parameter of parameters) {
      if ((parameter.description ?? "").length > LONGEST_ARGUMENT_DESCRIPTION) {
        faults.push(`${id}: description of ${parameter.name} too long`);
      }
    }
    if (!reference.some((one) => one.id === id)) faults.push(`${id}: has no reference`);
  }
  for (const { id } of reference) {
    if (!metadata.functions.some((one) => one.id === id)) faults.push(`${id}: has no metadata`);
  }
  return faults;
}
