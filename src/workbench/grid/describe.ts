/** What completion and argument help of the grid show of our functions. */
import { BooleanNumber } from "@univerjs/core";
import { FunctionType, type IFunctionInfo } from "@univerjs/engine-formula";
import type { IDescriptionService } from "@univerjs/sheets-formula";
import type { LoadedFunctions } from "../../engine/functions";
import { firstSentence } from "../../help/wording";

export const descriptionsOf = ({ functions }: LoadedFunctions): IFunctionInfo[] =>
  functions.map(({ name, metadata }) => ({
    functionName: name,
    functionType: FunctionType.User,
    description: metadata.description,
    abstract: firstSentence(metadata.description),
    functionParameter: metadata.parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description,
      example: parameter.optional ? `[${parameter.name}]` : parameter.name,
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  }));

type Listed = ReturnType<IDescriptionService["getSearchListByNameFirstLetter"]>;

/** As many as the grid lists. */
const LISTED = 10;

/** Our functions are found by each word of their names, too, behind what begins so: "fit" finds STRENGTH.FIT. */
export function findByAnyWord(service: IDescriptionService): void {
  const byBeginning = service.getSearchListByNameFirstLetter.bind(service);
  service.getSearchListByNameFirstLetter = (typed) => {
    const begins = byBeginning(typed);
    const word = typed.trim().toUpperCase();
    if (word.length < 3 || word.includes(".")) return begins;
    const within: Listed = [];
    for (const { functionType, functionName, abstract } of service.getDescriptions().values())
      if (functionType === FunctionType.User && functionName.includes(`.${word}`))
        within.push({ name: functionName, desc: abstract, functionType });
    return [...begins.slice(0, Math.max(LISTED / 2, LISTED - within.length)), ...within];
  };
}
