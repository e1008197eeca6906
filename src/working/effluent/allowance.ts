import { difference, product, quotient } from "../expression";
import { stack } from "../picture";
import { step, type Working } from "../step";

export function allowance(
  limit: number,
  background: number,
  retention: number,
  production: number,
  factor: number,
  removal: number,
  margin: number,
): Working {
  const raw = quotient(product(limit, difference(1, margin)), difference(1, removal));
  const room = difference(raw.value, background);
  const perDose = product(difference(1, retention), production, factor);
  return {
    steps: [
      step("Raw load that the limit leaves, margin kept", raw, "kg/d"),
      step("Left for the additive", room, "kg/d"),
      step("Load that each kg/t of dose brings", perDose, "kg/d per kg/t"),
      step("Largest dose", quotient(room.value, perDose.value), "kg/t"),
    ],
    picture: stack("What the limit holds, before the plant", "kg/d", [
      { label: "everything else", value: background },
      { label: "the additive at this dose", value: room.value },
      {
        label: "margin",
        value: difference(quotient(limit, difference(1, removal)).value, raw.value).value,
      },
    ]),
    remarks: ["The permit and its authority decide, not this figure."],
  };
}
