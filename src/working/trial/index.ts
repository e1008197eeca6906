import { compare } from "./compare";
import { handsheetBatch, makeDown } from "./laboratory";
import { ladder } from "./ladder";
import { order } from "./order";
import { replicates } from "./replicates";
import { settling } from "./settling";

export const trial = {
  "TRIAL.LADDER": ladder,
  "TRIAL.REPLICATES": replicates,
  "TRIAL.ORDER": order,
  "TRIAL.HANDSHEET": handsheetBatch,
  "TRIAL.MAKEDOWN": makeDown,
  "TRIAL.COMPARE": compare,
  "TRIAL.SETTLING": settling,
};
