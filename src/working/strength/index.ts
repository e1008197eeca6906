import { band } from "./band";
import { doseWanted } from "./dose-for";
import { fit } from "./fit";
import { responded } from "./response";
import { sampled } from "./sample";
import { index, length, page } from "./sheet";

export const strength = {
  "STRENGTH.INDEX": index,
  "STRENGTH.LENGTH": length,
  "STRENGTH.PAGE": page,
  "STRENGTH.RESPONSE": responded,
  "STRENGTH.FIT": fit,
  "STRENGTH.BAND": band,
  "STRENGTH.SAMPLE": sampled,
  "STRENGTH.DOSEFOR": doseWanted,
};
