import {
  ANHYDROGLUCOSE,
  NITROGEN,
  QUATERNARY_CHLORIDE,
  unitMass,
} from "../model/charge/substitution";
import { difference, product, quotient, sum } from "./expression";
import { percent, stack } from "./picture";
import { each, line, step, type Working } from "./step";

export const charge = {
  "CHARGE.SUBSTITUTION": (nitrogen: number): Working => ({
    steps: [
      step("Groups in a gram of dry starch", quotient(product(1000, nitrogen), NITROGEN), "mmol/g"),
      step(
        "Groups per sugar unit, the weight of the groups taken off",
        quotient(
          product(ANHYDROGLUCOSE, nitrogen),
          difference(NITROGEN, product(QUATERNARY_CHLORIDE, nitrogen)),
        ),
        "mol/mol",
      ),
    ],
    remarks: [
      "All of this nitrogen is taken for that of the groups: take off the protein of the native starch first.",
    ],
  }),

  "CHARGE.NITROGEN": (substitution: number): Working => ({
    steps: [
      unitStep(substitution),
      step(
        "Bound nitrogen in it",
        quotient(product(NITROGEN, substitution), unitMass(substitution)),
        "fraction",
      ),
    ],
    remarks: ["An analysis finds the protein of the starch on top of it."],
  }),

  "CHARGE.DENSITY": (substitution: number): Working => ({
    steps: [
      unitStep(substitution),
      step(
        "One charge for each group",
        quotient(product(1000, substitution), unitMass(substitution)),
        "meq/g",
      ),
    ],
    remarks: ["A titration finds less where the polyelectrolyte does not reach every group."],
  }),

  "CHARGE.LIMIT": (
    surfaceDemand: number,
    waterDemand: number,
    consistency: number,
    density: number,
    otherCationic: number,
  ): Working => {
    const water = quotient(quotient(difference(1, consistency), consistency), 1000);
    const ofWater = product(waterDemand, water.value);
    const demand = sum(surfaceDemand, ofWater.value);
    const left = difference(demand.value, otherCationic);
    const inWater = ofWater.value / demand.value;
    return {
      steps: [
        step("Water with a gram of solids", water, "L/g"),
        each("Demand, for a gram of solids", [
          line("of the solids", surfaceDemand, "µeq/g"),
          line("of their water", ofWater, "µeq/g"),
          line("together", demand, "µeq/g"),
        ]),
        ...(otherCationic === 0
          ? []
          : [step("Left once the others have taken theirs", left, "µeq/g")]),
        step("Dose whose charge equals it", quotient(left.value, density), "kg/t"),
      ],
      picture: stack("Where the cationic demand is", "µeq/g", [
        { label: "solids", value: surfaceDemand },
        { label: "water", value: ofWater.value },
      ]),
      remarks: [
        "A ceiling to confirm by titration, not a dose to run at: large molecules do not reach every charge.",
        ...(inWater > 0
          ? [
              `${percent(inWater)} of the demand is in the water. Water that comes round brings it once, not anew with every tonne.`,
            ]
          : []),
      ],
    };
  },
};

const unitStep = (substitution: number) =>
  step(
    "Mass of a sugar unit with its groups",
    sum(ANHYDROGLUCOSE, product(QUATERNARY_CHLORIDE, substitution)),
    "g/mol",
  );
