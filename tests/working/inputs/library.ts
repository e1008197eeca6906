import fc from "fast-check";
import { type Inputs, left, oneOf } from "./cells";

const ownTable = fc.constant([
  ["name", "COD factor [g/g]", "kind"],
  ["My starch", 1.07, "native starch"],
  ["Guar gum", 1.2, ""],
]);

export const libraryInputs: Inputs = {
  "LIBRARY.ADDITIVES": fc.tuple(left(oneOf("starch", "gum", "Native starch")), left(ownTable)),
  "LIBRARY.ADDITIVE": fc.tuple(
    oneOf("Guar gum", "Native maize starch", "Glyoxalated polyacrylamide", "My starch"),
    oneOf("COD factor", "charge density", "formula", "typical dose", "nitrogen"),
    left(ownTable),
  ),
  "LIBRARY.COMPONENTS": fc.tuple(left(ownTable)),
  "LIBRARY.COMPONENT": fc.tuple(
    oneOf("Kaolin", "Secondary fines", "Talc"),
    oneOf("kind", "specific surface", "ash factor", "half load", "charge"),
  ),
  "LIBRARY.SOURCE": fc.tuple(
    oneOf("Kaolin", "Guar gum", "My starch", "Primary fines"),
    oneOf("kind", "COD factor", "specific surface", "surface against fibre", "charge density"),
    left(ownTable),
  ),
  "LIBRARY.SAFETY": fc.tuple(
    oneOf("Cooking", "spills", "Kaolin", "Carboxymethyl cellulose", "Xanthan gum", "Effluent"),
  ),
  "LIBRARY.VERSION": fc.constant([]),
};
