import type { Inputs } from "./cells";
import { costInputs } from "./cost";
import { dosingInputs } from "./dosing";
import { furnishInputs } from "./furnish";
import { libraryInputs } from "./library";
import { strengthInputs } from "./strength";
import { trialInputs } from "./trial";

export const inputs: Inputs = {
  ...furnishInputs,
  ...dosingInputs,
  ...strengthInputs,
  ...costInputs,
  ...trialInputs,
  ...libraryInputs,
};
