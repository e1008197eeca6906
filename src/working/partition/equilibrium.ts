import { settledConcentration } from "../../model/partition/equilibrium";
import { dissolvedPerConcentration, filledSites } from "../../model/partition/furnish";
import { sumOf, type Vector } from "../../model/vectors";
import { at } from "../at";
import { difference, product, quotient, sum } from "../expression";
import { amount, stack } from "../picture";
import { each, found, line, type Step, step, type Working } from "../step";
import { DISSOLVED, eachComponent, partsOf, whereItIs } from "./components";

export function equilibrium(
  dose: number,
  consistency: number,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
): Working {
  const filled = filledSites(shares, surfaces, capacities);
  const perConcentration = dissolvedPerConcentration(consistency);
  const concentration = settledConcentration(dose, perConcentration, filled, halfLoads);
  const water = waterPerTonne(consistency);
  const onEach = [
    ...eachComponent(filled.length, "kg/t", (i) =>
      quotient(product(at(filled, i), concentration), sum(at(halfLoads, i), concentration)),
    ),
    line(DISSOLVED, quotient(product(concentration, water.value), 1000), "kg/t"),
  ];
  return {
    says: `Once settled, ${whereItIs(partsOf(onEach))}`,
    steps: [
      sites(shares, surfaces, capacities),
      step("Water with a tonne of furnish", water, "m³/t"),
      found("Dissolved, where all of the dose is accounted for", concentration, "mg/L"),
      step("The check: held and dissolved together", sum(...onEach.map(numberOf)), "kg/t"),
      each("Held on each component, and last dissolved", onEach),
    ],
    picture: stack("Where the dose goes", "kg/t", partsOf(onEach)),
    remarks: remarksOn(dose, sumOf(filled)),
  };
}

function remarksOn(dose: number, sites: number): readonly string[] {
  return [
    "All solids meet the additive at once and all of it may change places: where order counts see PARTITION.ORDERED.",
    ...(dose > sites
      ? [`All sites together hold ${amount(sites, "kg/t")}: the dose is above that.`]
      : []),
  ];
}

const numberOf = ({ value }: { readonly value: unknown }) => Number(value);

/** The step that every partition with filling sites begins with. */
export const sites = (shares: Vector, surfaces: Vector, capacities: Vector): Step =>
  each(
    "Additive that fills each component: share × surface × capacity",
    eachComponent(shares.length, "kg/t", (i) =>
      product(at(shares, i), at(surfaces, i), at(capacities, i)),
    ),
  );

export const waterPerTonne = (consistency: number) =>
  quotient(difference(1, consistency), consistency);
