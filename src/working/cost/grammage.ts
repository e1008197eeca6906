import { grammageSaving, NOT_CHECKED } from "../../model/cost/grammage";
import { difference, product, quotient } from "../expression";
import { amount, stack } from "../picture";
import { each, line, type Working } from "../step";

export function grammage(
  strength: number,
  index: number,
  newIndex: number,
  fibrePrice: number,
  addedCost: number,
): Working {
  const { before, after, fibreSaved } = grammageSaving(
    strength,
    index,
    newIndex,
    fibrePrice,
    addedCost,
  );
  const net = quotient(
    difference(product(fibreSaved, fibrePrice), product(after, addedCost)),
    1000,
  );
  return {
    says: `${amount(before, "g/m²")} before and ${amount(after, "g/m²")} after, which saves ${amount(net.value, "money per 1,000 m²")}.`,
    steps: [
      each("Grammage that carries the strength, before and after", [
        line("grammage before", quotient(product(1000, strength), index), "g/m²"),
        line("grammage after", quotient(product(1000, strength), newIndex), "g/m²"),
        line("fibre saved", difference(before, after), "kg per 1,000 m²"),
        line("net saving", net, "money per 1,000 m²"),
        { label: "not checked", tex: undefined, value: NOT_CHECKED, unit: "" },
      ]),
    ],
    ...(fibreSaved > 0
      ? {
          picture: stack("The sheet as it is", "g/m²", [
            { label: "still needed", value: after },
            { label: "saved", value: fibreSaved },
          ]),
        }
      : {}),
    remarks: [
      ...(fibreSaved > 0
        ? [
            `The treatment may add up to ${amount((fibreSaved * fibrePrice) / after, "money per tonne of paper")} before the saving is gone.`,
          ]
        : ["The new index is not above the old: nothing is saved."]),
      `Not checked, and often what forbids a lighter sheet: ${NOT_CHECKED}.`,
    ],
  };
}
