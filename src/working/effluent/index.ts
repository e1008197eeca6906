import { allowance } from "./allowance";
import { concentration, equivalents, load, loss } from "./loads";
import { oxygen } from "./oxygen";
import { treatment } from "./treatment";

export const effluent = {
  "EFFLUENT.LOSS": loss,
  "EFFLUENT.OXYGEN": oxygen,
  "EFFLUENT.COD": load("Chemical oxygen demand"),
  "EFFLUENT.BOD": load("Biochemical oxygen demand"),
  "EFFLUENT.NITROGEN": load("Nitrogen"),
  "EFFLUENT.CONCENTRATION": concentration,
  "EFFLUENT.ALLOWANCE": allowance,
  "EFFLUENT.TREATMENT": treatment,
  "EFFLUENT.EQUIVALENTS": equivalents,
};
