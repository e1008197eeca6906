/**
 * The built functions, bound as a host binds them: the script runs once with nothing lent to it but
 * CustomFunctions, and each function is found again by its id.
 */
import type { BuiltFunctions, FunctionMetadata } from "../build/built-functions";
import type { Call } from "../cells/observer";

export const NAMESPACE = "WETEND";

export interface LoadedFunction {
  /** As it stands in a formula: WETEND.DOSE.PUMP. */
  readonly name: string;
  readonly metadata: FunctionMetadata;
  readonly call: (...argumentsAndInvocation: unknown[]) => unknown;
}

export interface LoadedFunctions {
  readonly functions: readonly LoadedFunction[];
  /** Lets somebody watch each call; undefined ends it. */
  readonly observe: (observer: ((call: Call) => void) | undefined) => void;
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

export function loadFunctions(built: Pick<BuiltFunctions, "code" | "metadata">): LoadedFunctions {
  const bound = new Map<string, LoadedFunction["call"]>();
  const host = {
    associate: (id: string, call: LoadedFunction["call"]) => bound.set(id, call),
    Error: HostError,
    ErrorCode: errorCodes,
  };
  const run = new Function("CustomFunctions", `${built.code}\nreturn dosewright;`);
  const { observe } = run(host) as Pick<LoadedFunctions, "observe">;

  const functions = built.metadata.functions.map((metadata) => {
    const call = bound.get(metadata.id);
    if (!call)
      throw new Error(`The built functions lack ${metadata.id}, which is in their metadata.`);
    return { name: `${NAMESPACE}.${metadata.name}`.toUpperCase(), metadata, call };
  });
  return {
    functions,
    observe,
    errorOf: (error, message) => new HostError(error, message),
    readError(answer) {
      if (!(answer instanceof HostError)) return undefined;
      return { error: answer.code, ...(answer.message ? { message: answer.message } : {}) };
    },
  };
}
