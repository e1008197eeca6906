import { allowance } from "./allowance";
import { concentration, equivalents, load, loss } from "./loads";
import { oxygen } from "./oxygen";
import { treatment } from "./treatment";

export const effluent = {
  "EFFLUENT.LOSS": loss,
  "EFFLUENT.OXYGEN": oxygen,
  "EFFLUENT.COD": load(
    "Chemical oxygen demand",
    "The factor is that of a COD test: theoretical demand lies above it, and BOD below.",
  ),
  "EFFLUENT.BOD": load(
    "Biochemical oxygen demand",
    "The factor is that of a BOD test of five days: COD lies above it.",
  ),
  "EFFLUENT.NITROGEN": load(
    "Nitrogen",
    "Nitrogen bound in a polymer is set free slowly: a plant may not nitrify it.",
  ),
  "EFFLUENT.CONCENTRATION": concentration,
  "EFFLUENT.ALLOWANCE": allowance,
  "EFFLUENT.TREATMENT": treatment,
  "EFFLUENT.EQUIVALENTS": equivalents,
};
