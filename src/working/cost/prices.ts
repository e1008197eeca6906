import { difference, product, quotient, sum } from "../expression";
import { bars, stack } from "../picture";
import { step, type Working } from "../step";

export function active(price: number, solids: number, share: number, freight: number): Working {
  const inIt = product(solids, share);
  const paid = sum(price, freight);
  return {
    steps: [
      step("Paid for a kilogram as received", paid, "money/kg"),
      step("Dry active additive in it", inIt, "kg/kg"),
      step("Price of dry active additive", quotient(paid.value, inIt.value), "money/kg"),
    ],
    ...(inIt.value === 1
      ? { remarks: ["Solids and active part are 1: the product is taken to be pure and dry."] }
      : {}),
  };
}

export function parity(
  price: number,
  retention: number,
  otherRetention: number,
  lossPrice: number,
  relativeEffect: number,
  otherLossPrice = lossPrice,
): Working {
  const lost = product(difference(1, retention), lossPrice);
  const perKept = quotient(sum(price, lost.value), retention);
  const worth = product(relativeEffect, otherRetention, perKept.value);
  const otherLost = product(difference(1, otherRetention), otherLossPrice);
  const other = difference(worth.value, otherLost.value);
  return {
    steps: [
      step("What the loss of each kilogram bought costs", lost, "money/kg"),
      step("Cost of each kilogram kept in the sheet", perKept, "money/kg"),
      step("What a kilogram of the other is worth by what it keeps", worth, "money/kg"),
      step("What its own loss costs", otherLost, "money/kg"),
      step("Price of the other that costs the same", other, "money/kg"),
    ],
    picture: bars("Equal prices", "money/kg", [
      { label: "this additive", value: price },
      { label: "the other", value: other.value },
    ]),
    remarks: [
      "Both retentions are overall ones, with the loop closed: a first-pass retention tells another story.",
      "Not advice to buy: a kilogram kept is taken to have the effect that relativeEffect says.",
      ...(other.value < 0
        ? [
            "Below 0: what is lost of the other costs more than what is kept is worth, even as a gift.",
          ]
        : []),
      ...lossRemarks(lossPrice, otherLossPrice),
    ],
  };
}

function lossRemarks(loss: number, otherLoss: number): readonly string[] {
  if (loss === otherLoss) {
    return loss === 0
      ? ["What leaves with the water is taken to cost nothing."]
      : ["A kilogram lost is taken to cost the same of both."];
  }
  if (loss === 0) return ["What leaves of this additive is taken to cost nothing."];
  return otherLoss === 0 ? ["What leaves of the other is taken to cost nothing."] : [];
}

export function effluent(
  dose: number,
  retention: number,
  treatmentPrice: number,
  factor: number,
): Working {
  const lost = product(dose, difference(1, retention));
  const demand = product(lost.value, factor);
  return {
    steps: [
      step("Not retained", lost, "kg/t"),
      step("Its chemical oxygen demand", demand, "kg COD/t"),
      step("Cost of treating it", product(demand.value, treatmentPrice), "money/t"),
    ],
    picture: stack("Where the dose goes", "kg/t", [
      { label: "in the sheet", value: product(dose, retention).value },
      { label: "with the water", value: lost.value },
    ]),
    remarks: [
      "What was degraded on the way is oxygen demand still, and is counted.",
      "The factor is grams of COD, as the price is per kg of COD: one of BOD would charge too little.",
    ],
  };
}
