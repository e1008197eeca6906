/**
 * The built functions, bound as a host binds them: the script runs once with nothing lent to it but
 * CustomFunctions, and each function is found again by its id.
 */
import type { BuiltFunctions, FunctionMetadata, FunctionsMetadata } from "../build/built-functions";
import type { Observer } from "../cells/observer";
import { NAMESPACE } from "../help/reference";

export interface LoadedFunction {
  /** As it stands in a formula: WETEND.DOSE.PUMP. */
  readonly name: string;
  readonly metadata: FunctionMetadata;
  readonly call: (...argumentsAndInvocation: unknown[]) => unknown;
}

export interface LoadedFunctions {
  readonly functions: readonly LoadedFunction[];
  /** Lets somebody watch each call; undefined ends it. */
  readonly observe: (observer: Observer | undefined) => void;
  /** An error cell as the functions take it. */
  readonly errorOf: (error: string, message?: string) => object;
  /** The error that a function threw or gave back; undefined for anything else. */
  readonly readError: (answer: unknown) => { error: string; message?: string } | undefined;
}

const errorCodes = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
};

class HostError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** What the script offers of itself, under the name `dosewright`. */
export type Offered = Pick<LoadedFunctions, "observe">;

export interface FunctionsHost {
  /** To be lent to the script, under this name. */
  readonly CustomFunctions: object;
  /** After the script has run: its functions, each with what the metadata say of it. */
  readonly bind: (metadata: FunctionsMetadata, offered: Offered) => LoadedFunctions;
}

export function functionsHost(): FunctionsHost {
  const bound = new Map<string, LoadedFunction["call"]>();
  const CustomFunctions = {
    associate: (id: string, call: LoadedFunction["call"]) => bound.set(id, call),
    Error: HostError,
    ErrorCode: errorCodes,
  };
  const bind = (about: FunctionsMetadata, { observe }: Offered): LoadedFunctions => ({
    functions: about.functions.map((metadata) => {
      const call = bound.get(metadata.id);
      if (!call)
        throw new Error(`The built functions lack ${metadata.id}, which is in their metadata.`);
      return { name: `${NAMESPACE}.${metadata.name}`.toUpperCase(), metadata, call };
    }),
    observe,
    errorOf: (error, message) => new HostError(error, message),
    readError(answer) {
      if (!(answer instanceof HostError)) return undefined;
      return { error: answer.code, ...(answer.message ? { message: answer.message } : {}) };
    },
  });
  return { CustomFunctions, bind };
}

/** Runs the script where there is no page to run it. */
export function loadFunctions(built: Pick<BuiltFunctions, "code" | "metadata">): LoadedFunctions {
  const host = functionsHost();
  const run = new Function("CustomFunctions", `${built.code}\nreturn dosewright;`);
  return host.bind(built.metadata, run(host.CustomFunctions) as Offered);
}
