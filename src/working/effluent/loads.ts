import { difference, product, quotient } from "../expression";
import { stack } from "../picture";
import { type Step, step, type Working } from "../step";

const lost = (dose: number, retention: number, production: number) =>
  product(dose, difference(1, retention), production);

const kept = (dose: number, retention: number, production: number) =>
  product(dose, retention, production).value;

export function loss(dose: number, retention: number, production: number): Working {
  return {
    steps: [
      step("Added each day", product(dose, production), "kg/d"),
      step("Not retained", lost(dose, retention, production), "kg/d"),
    ],
    picture: whereTheDayGoes(dose, retention, production),
    remarks: [
      "The retention is the overall one, with the loop closed: a first-pass retention would send to the sewer what comes round.",
    ],
  };
}

/** The load that comes with the additive lost: its oxygen demand, or its nitrogen. */
export const load =
  (what: string, remark: string) =>
  (dose: number, retention: number, production: number, factor: number): Working => {
    const leaving: Step = step("Not retained", lost(dose, retention, production), "kg/d");
    return {
      steps: [
        leaving,
        step(what, product(lost(dose, retention, production).value, factor), "kg/d"),
      ],
      picture: whereTheDayGoes(dose, retention, production),
      remarks: [
        "This is the raw load at the machine’s outfall. What was degraded on the way counts in full.",
        remark,
      ],
    };
  };

export function concentration(amount: number, flow: number): Working {
  return { steps: [step("Load in its flow", quotient(product(1000, amount), flow), "mg/L")] };
}

export function equivalents(bod: number, perPerson: number): Working {
  return { steps: [step("People who would send as much", quotient(bod, perPerson), "persons")] };
}

const whereTheDayGoes = (dose: number, retention: number, production: number) =>
  stack("Additive of a day", "kg/d", [
    { label: "in the sheet", value: kept(dose, retention, production) },
    { label: "with the water", value: lost(dose, retention, production).value },
  ]);
