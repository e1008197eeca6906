import { elementwise } from "../cells/elementwise";
import { aboveZero, aboveZeroUpTo, quantity } from "../cells/quantity";
import { pageTensileIndex } from "../model/strength/page";
import { breakingLength, tensileIndex } from "../model/strength/tensile-index";

const index = elementwise(
  "STRENGTH.INDEX",
  [quantity("strength", "kN/m", aboveZero), quantity("grammage", "g/m²", aboveZero)],
  tensileIndex,
);

/**
 * Tensile index from tensile strength and grammage, both of the conditioned sheet: conditioned force over
 * oven-dry grammage would overstate it.
 * @customfunction STRENGTH.INDEX
 * @param strength Tensile strength [kN/m]; above 0.
 * @param grammage Grammage of the sheet that was tested [g/m²]; above 0.
 * @returns Tensile index [N·m/g].
 * @equation I = \frac{1000\,S}{w}
 * @range 20 mm/min on a span of 180 mm: results at 100 mm/min are another method.
 * @source ISO 1924-2.
 * @words tensile strength, strength per grammage, breaking force
 * @example =WETEND.STRENGTH.INDEX(3.6, 60) → 60
 * @requiresAddress
 */
export function strengthIndex(
  strength: any[][],
  grammage: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return index(strength, grammage, invocation);
}

const length = elementwise(
  "STRENGTH.LENGTH",
  [quantity("index", "N·m/g", aboveZero)],
  breakingLength,
);

/**
 * Length at which a hanging strip of the sheet breaks under its own weight.
 * @customfunction STRENGTH.LENGTH
 * @param index Tensile index [N·m/g]; above 0.
 * @returns Breaking length [km].
 * @equation L = \frac{I}{9.80665}
 * @range Any sheet.
 * @source ISO 1924-2; standard gravity 9.80665 m/s².
 * @words self-supporting length, kilometres
 * @example =WETEND.STRENGTH.LENGTH(60) → 6.11829728
 * @requiresAddress
 */
export function strengthLength(index: any[][], invocation: CustomFunctions.Invocation): any[][] {
  return length(index, invocation);
}

const page = elementwise(
  "STRENGTH.PAGE",
  [
    quantity("zeroSpan", "N·m/g", aboveZero),
    quantity("coarseness", "mg/m", aboveZero),
    quantity("bond", "MPa", aboveZero),
    quantity("perimeter", "µm", aboveZero),
    quantity("length", "mm", aboveZero),
    quantity("bonded", "fraction", aboveZeroUpTo(1)),
  ],
  pageTensileIndex,
);

/**
 * Tensile index of a sheet from its fibres and their bonds. A dry-strength additive works on the bonds, its
 * strength and the bonded area; it cannot pass the strength of the fibres.
 * @customfunction STRENGTH.PAGE
 * @param zeroSpan Zero-span tensile index of the fibres [N·m/g]; above 0.
 * @param coarseness Fibre coarseness [mg/m]; above 0.
 * @param bond Shear strength of the bond [MPa]; above 0.
 * @param perimeter Perimeter of the fibre section [µm]; above 0.
 * @param length Fibre length [mm]; above 0.
 * @param bonded Relative bonded area [fraction]; above 0, up to 1.
 * @returns Tensile index [N·m/g].
 * @equation \frac{1}{T} = \frac{9}{8\,Z} + \frac{12\,C}{b\,P\,L\,\text{RBA}}
 * @range Straight fibres in a well-formed sheet without direction; range not stated by the source.
 * @source Page, Tappi 52 (1969) 674, with coarseness for fibre section times density.
 * @words Page equation, bonded area, fibre strength, bond strength
 * @example =WETEND.STRENGTH.PAGE(120, 0.2, 5, 70, 2.3, 0.4) → 59.4233
 * @requiresAddress
 */
export function strengthPage(
  zeroSpan: any[][],
  coarseness: any[][],
  bond: any[][],
  perimeter: any[][],
  length: any[][],
  bonded: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return page(zeroSpan, coarseness, bond, perimeter, length, bonded, invocation);
}
