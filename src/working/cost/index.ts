import { budgeted } from "./budget";
import { grammage } from "./grammage";
import { marginal } from "./marginal";
import { mix } from "./mix";
import { additivePerGain, refiningPerGain } from "./per-gain";
import { active, effluent, parity } from "./prices";
import { variance } from "./variance";

export const cost = {
  "COST.ACTIVEPRICE": active,
  "COST.ADDITIVE": additivePerGain,
  "COST.REFINING": refiningPerGain,
  "COST.MARGINAL": marginal,
  "COST.PARITY": parity,
  "COST.EFFLUENT": effluent,
  "COST.GRAMMAGE": grammage,
  "COST.MIX": mix,
  "COST.BUDGET": budgeted,
  "COST.VARIANCE": variance,
};
