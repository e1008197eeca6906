import { readFormula } from "../../model/effluent/chemical-formula";
import { ELEMENTS } from "../../model/effluent/elements";
import { product, quotient, sum, type Term } from "../expression";
import { each, line, step, type Working } from "../step";

const NITRIFICATION = 8;

export function oxygen(formula: string, nitrify: boolean): Working {
  const composition = [...readFormula(formula)];
  const overElements = (of: (symbol: string) => number): readonly Term[] =>
    composition.map(([symbol, count]) => product(count, of(symbol)));
  const mass = sum(...overElements((symbol) => ELEMENTS.get(symbol)?.mass ?? Number.NaN));
  const electrons = overElements((symbol) => ELEMENTS.get(symbol)?.oxidised ?? Number.NaN);
  const nitrogen = composition.find(([symbol]) => symbol === "N")?.[1] ?? 0;
  const given = sum(...electrons, ...(nitrify ? [product(NITRIFICATION, nitrogen)] : []));
  const molecules = quotient(given.value, 4);
  const moleculeMass = product(2, ELEMENTS.get("O")?.mass ?? Number.NaN);
  return {
    steps: [
      each(
        "Atoms in a formula unit",
        composition.map(([symbol, count]) => line(symbol, count, "atoms")),
      ),
      step("Mass of a formula unit", mass, "g/mol"),
      step(
        nitrify
          ? "Electrons given up when all is oxidised, nitrogen to nitrate"
          : "Electrons given up when all is oxidised, nitrogen left as ammonia",
        given,
        "per unit",
      ),
      step("Oxygen that takes four electrons each", molecules, "O₂ per unit"),
      step(
        "Oxygen demand",
        quotient(product(molecules.value, moleculeMass.value), mass.value),
        "g O₂/g",
      ),
    ],
    remarks: ["Theoretical: a test measures less. For a permit take a measured factor."],
  };
}
