/** What completion and argument help of the grid show of our functions. */
import { BooleanNumber } from "@univerjs/core";
import { FunctionType, type IFunctionInfo } from "@univerjs/engine-formula";
import type { LoadedFunctions } from "../engine/functions";

/** The first sentence of a description. */
const abstractOf = (description: string) =>
  /^.*?[.!?](?=\s|$)/s.exec(description)?.[0] ?? description;

export const descriptionsOf = ({ functions }: LoadedFunctions): IFunctionInfo[] =>
  functions.map(({ name, metadata }) => ({
    functionName: name,
    functionType: FunctionType.User,
    description: metadata.description,
    abstract: abstractOf(metadata.description),
    functionParameter: metadata.parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description,
      example: "",
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  }));
