import {
  aerobicTreatment,
  NITROGEN_PER_BOD,
  PHOSPHORUS_PER_BOD,
} from "../../model/effluent/treatment";
import { product, quotient } from "../expression";
import { amount, money, percent, stack } from "../picture";
import { each, line, type Step, type Working } from "../step";

/** Below this share an aerobic plant leaves most of the load as it is (typical, from memory). */
const HARDLY_TREATABLE = 0.3;

export function treatment(
  cod: number,
  bod: number,
  power: number,
  sludge: number,
  nitrogen: number,
  phosphorus: number,
  oxygenPerBod: number,
  aeration: number,
  sludgeYield: number,
): Working {
  const prices = { power, sludge, nitrogen, phosphorus };
  const day = aerobicTreatment(cod, bod, prices, { oxygenPerBod, aeration, sludgeYield });
  const takes: Step = each("What the BOD of a day takes", [
    line("oxygen", product(bod, oxygenPerBod), "kg/d"),
    line("aeration power", quotient(day.oxygen, aeration), "kWh/d"),
    line("dry sludge that grows", product(bod, sludgeYield), "kg/d"),
    line("nitrogen, 5 for 100 of BOD", product(bod, NITROGEN_PER_BOD), "kg/d"),
    line("phosphorus, 1 for 100 of BOD", product(bod, PHOSPHORUS_PER_BOD), "kg/d"),
  ]);
  const costs: Step = each("What that costs", [
    line("aeration power", product(day.aerationPower, power), "money/d"),
    line("dry sludge", product(day.sludge, sludge), "money/d"),
    line("nitrogen", product(day.nitrogen, nitrogen), "money/d"),
    line("phosphorus", product(day.phosphorus, phosphorus), "money/d"),
  ]);
  const free = Object.entries(prices).filter(([, price]) => price === 0);
  const { treatableShare } = day;
  return {
    says: `A day takes ${amount(day.oxygen, "kg")} of oxygen, leaves ${amount(day.sludge, "kg")} of dry sludge and costs ${money(day.totalCost)}.`,
    steps: [
      takes,
      costs,
      {
        kind: "table",
        what: "The day at the plant",
        columns: ["aerobic treatment", "amount", "cost [money/d]"],
        rows: [
          ["oxygen [kg/d]", day.oxygen, ""],
          ["aeration power [kWh/d]", day.aerationPower, day.powerCost],
          ["dry sludge [kg/d]", day.sludge, day.sludgeCost],
          ["nitrogen needed [kg/d]", day.nitrogen, day.nitrogenCost],
          ["phosphorus needed [kg/d]", day.phosphorus, day.phosphorusCost],
          ["total", "", day.totalCost],
          ["BOD per COD [kg/kg]", treatableShare ?? "", ""],
        ],
      },
    ],
    ...(day.totalCost > 0
      ? {
          picture: stack("What a day of treatment costs", "money/d", [
            { label: "aeration power", value: day.powerCost },
            { label: "dry sludge", value: day.sludgeCost },
            { label: "nitrogen", value: day.nitrogenCost },
            { label: "phosphorus", value: day.phosphorusCost },
          ]),
        }
      : {}),
    remarks: [
      ...(free.length > 0
        ? [`Without a price, and so without a cost here: ${free.map(([what]) => what).join(", ")}.`]
        : []),
      ...(treatableShare !== undefined && treatableShare < HARDLY_TREATABLE
        ? [
            `Only ${percent(treatableShare)} of the COD is BOD: an aerobic plant leaves most of this load in the water (typical, from memory).`,
          ]
        : []),
      "Nutrients that the water already holds need not be bought, and nitrification takes oxygen beyond this.",
    ],
  };
}
