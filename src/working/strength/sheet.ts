import { STANDARD_GRAVITY } from "../../model/strength/tensile-index";
import { product, quotient, sum } from "../expression";
import { amount, percent, stack } from "../picture";
import { each, line, step, type Working } from "../step";

export function index(strength: number, grammage: number): Working {
  return {
    steps: [step("Tensile index", quotient(product(1000, strength), grammage), "N·m/g")],
    remarks: [
      "Strength and grammage are both of the conditioned sheet: an oven-dry grammage under a conditioned force overstates the index.",
    ],
  };
}

export function length(index: number): Working {
  return {
    steps: [step("Breaking length, over the gravity", quotient(index, STANDARD_GRAVITY), "km")],
  };
}

export function page(
  zeroSpan: number,
  coarseness: number,
  bond: number,
  perimeter: number,
  fibreLength: number,
  bonded: number,
): Working {
  const ofFibres = quotient(9, product(8, zeroSpan));
  const ofBonds = quotient(product(12, coarseness), product(bond, perimeter, fibreLength, bonded));
  const weakness = sum(ofFibres.value, ofBonds.value);
  return {
    steps: [
      each("What weakens the sheet", [
        line("its fibres", ofFibres, "g/(N·m)"),
        line("its bonds", ofBonds, "g/(N·m)"),
      ]),
      step("Both together", weakness, "g/(N·m)"),
      step("Tensile index", quotient(1, weakness.value), "N·m/g"),
    ],
    picture: stack("What weakens the sheet", "g/(N·m)", [
      { label: "fibres", value: ofFibres.value },
      { label: "bonds", value: ofBonds.value },
    ]),
    remarks: [
      `The bonds make ${percent(ofBonds.value / weakness.value)} of the weakness: that part a dry-strength additive can work on. With perfect bonds the sheet would reach ${amount(1 / ofFibres.value, "N·m/g")}.`,
    ],
  };
}
