import { makeDown as mixed } from "../../model/trial/make-down";
import { difference, product, quotient } from "../expression";
import { amount, stack } from "../picture";
import { each, line, step, type Working } from "../step";

/** Less than that no laboratory doses well by volume. */
const SMALL_VOLUME = 0.5;

export function handsheetBatch(
  dose: number,
  stockConsistency: number,
  solution: number,
  grammage: number,
  area: number,
  sheets: number,
): Working {
  const fibre = product(grammage, area, sheets);
  const additive = product(dose, fibre.value);
  const volume = quotient(quotient(additive.value, 1000), solution);
  const stock = quotient(fibre.value, stockConsistency);
  return {
    says: `A batch takes ${amount(fibre.value, "g")} of fibre, ${amount(stock.value, "mL")} of stock, and ${amount(additive.value, "mg")} of additive in ${amount(volume.value, "mL")} of solution.`,
    steps: [
      each("What the batch takes", [
        line("fibre", fibre, "g"),
        line("stock", stock, "mL"),
        line("additive", additive, "mg"),
        line("solution", volume, "mL"),
      ]),
    ],
    remarks: [
      "Treat the stock of the whole batch at once and form its sheets from it: they are one batch, and count once.",
      "The grammage is oven-dry; stock and solution are taken to weigh 1 g/mL.",
      ...(volume.value > 0 && volume.value < SMALL_VOLUME
        ? ["So little solution is hard to measure out: make a weaker one."]
        : []),
    ],
  };
}

export function makeDown(
  volume: number,
  strength: number,
  solids: number,
  active: number,
  density: number,
): Working {
  const { productGrams, waterGrams } = mixed(volume, strength, solids, active, density);
  const solution = product(1000, volume, density);
  const inProduct = product(solids, active);
  return {
    says: `${amount(productGrams, "g")} of product into ${amount(waterGrams, "g")} of water.`,
    steps: [
      step("Mass of the solution", solution, "g"),
      step("Dry active additive in a gram of product", inProduct, "g/g"),
      each("What goes into the vessel", [
        line("product", quotient(product(solution.value, strength), inProduct.value), "g"),
        line("water", difference(solution.value, productGrams), "g"),
      ]),
    ],
    picture: stack("The solution", "g", [
      { label: "product as received", value: productGrams },
      { label: "water", value: waterGrams },
    ]),
    remarks: [
      "Water that condenses from steam counts as water: start with less, and make up to the mass at the end.",
      "Powder goes slowly into stirred water. Its dust can explode, and hot starch scalds: the supplier's safety data sheet, the site's rules and local law come first.",
    ],
  };
}
