import type { DoseUnit } from "../model/dose/convert";
import { convertDose } from "../model/dose/convert";
import { filledSites } from "../model/partition/furnish";
import type { Vector } from "../model/vectors";
import { difference, product, quotient, sum } from "./expression";
import { percent, stack } from "./picture";
import { each, line, numbered, step, type Working } from "./step";

export const dose = {
  "DOSE.TARGET": (retained: number, retention: number): Working => ({
    steps: [step("Dose that leaves the wanted amount", quotient(retained, retention), "kg/t")],
    picture: stack("Where the dose stays", "kg/t", [
      { label: "in the sheet", value: retained },
      { label: "not retained", value: difference(quotient(retained, retention), retained).value },
    ]),
    remarks: [
      "Retention falls as the surfaces fill: find it again at this dose before setting it.",
    ],
  }),

  "DOSE.PRODUCT": (amount: number, solids: number, active: number): Working => {
    const share = product(solids, active);
    return {
      steps: [
        step("Dry active additive in the product", share, "fraction"),
        step("Product as received", quotient(amount, share), "kg/t"),
      ],
      ...(share.value === 1
        ? { remarks: ["Solids and active part are 1: the product is taken to be pure and dry."] }
        : {}),
    };
  },

  "DOSE.CONVERT": (value: number, from: DoseUnit, to: DoseUnit, moisture: number): Working => {
    const size = (unit: DoseUnit) => convertDose(1, unit, "kg/t", moisture);
    return {
      steps: [
        each("One of each unit in kg/t", [
          line(from, size(from), "kg/t"),
          line(to, size(to), "kg/t"),
        ]),
        step("The dose in the other unit", quotient(product(value, size(from)), size(to)), to),
      ],
      remarks: [
        ...([from, to].includes("kg/t air-dry")
          ? [
              `Air-dry is taken as ${percent(moisture)} water. The 10 % of the trade is that of pulp; paper is drier.`,
            ]
          : []),
        ...([from, to].includes("lb/short ton")
          ? ["A short ton is 2000 lb, not a tonne: 1 lb/short ton is 0.5 kg/t exactly."]
          : []),
      ],
    };
  },

  "DOSE.THROUGHPUT": (
    speed: number,
    width: number,
    grammage: number,
    moisture: number,
  ): Working => {
    const paper = quotient(product(speed, width, 60, grammage), 1e6);
    return {
      steps: [
        step("Paper made, with its moisture", paper, "t/h"),
        step("Oven-dry", product(paper, difference(1, moisture)), "t/h"),
      ],
      remarks: [
        "This is paper made. A dose goes by furnish: where broke returns, or solids are lost, the furnish is another number.",
      ],
    };
  },

  "DOSE.STOCKFLOW": (flow: number, consistency: number, density: number): Working => ({
    steps: [
      step("Mass of stock", product(flow, density), "t/h"),
      step("Oven-dry", product(flow, density, consistency), "t/h"),
    ],
    remarks: ["All that flows is counted, broke included: it is not to be added again."],
  }),

  "DOSE.PUMP": (
    amount: number,
    throughput: number,
    strength: number,
    density: number,
  ): Working => ({
    steps: [
      step("Dry active additive wanted", product(amount, throughput), "kg/h"),
      step("Dry active additive in a litre of solution", product(strength, density), "kg/L"),
      step(
        "Flow of solution",
        quotient(product(amount, throughput), product(strength, density)),
        "L/h",
      ),
    ],
  }),

  "DOSE.SURFACELIMIT": (shares: Vector, surfaces: Vector, capacities: Vector): Working => {
    const filled = filledSites(shares, surfaces, capacities);
    return {
      steps: [
        each(
          "Additive that fills each component",
          filled.map((_, i) =>
            line(
              numbered("component", i),
              product(shares[i] as number, surfaces[i] as number, capacities[i] as number),
              "kg/t",
            ),
          ),
        ),
        step("Dose that fills every site", sum(...filled), "kg/t"),
      ],
      picture: stack(
        "Where the sites are",
        "kg/t",
        filled.map((value, i) => ({ label: numbered("component", i), value })),
      ),
      remarks: [
        "Well below this some additive is left in the water already: see PARTITION.EQUILIBRIUM.",
      ],
    };
  },
};
