import { difference, product, quotient } from "./expression";
import { amount, stack } from "./picture";
import { type Step, step, type Working } from "./step";

export const refining = {
  "REFINING.ENERGY": (power: number, noLoad: number, throughput: number): Working => ({
    steps: [
      netStep(power, noLoad),
      step("Net energy for each tonne", quotient(difference(power, noLoad), throughput), "kWh/t"),
    ],
    picture: whereItGoes(power, noLoad),
    remarks: [
      noLoad === 0
        ? "The no-load power is 0: this is gross energy, and counts what turns the rotor."
        : `Gross energy would be ${amount(power / throughput, "kWh/t")}: what turns the rotor treats no fibre.`,
      "The drainage that refining costs is not in it.",
    ],
  }),

  "REFINING.EDGELOAD": (
    power: number,
    noLoad: number,
    speed: number,
    cuttingLength: number,
  ): Working => ({
    steps: [
      netStep(power, noLoad),
      step("Bar edge that crosses in a minute", product(speed, cuttingLength), "km/min"),
      step(
        "Net energy on each metre of it",
        quotient(product(60, difference(power, noLoad)), product(speed, cuttingLength)),
        "J/m",
      ),
    ],
    picture: whereItGoes(power, noLoad),
    remarks: [
      "Typical, from memory: softwood 1.5 to 4 J/m, hardwood 0.3 to 1 J/m. Low loads brush the fibre, high loads cut it.",
    ],
  }),
};

const netStep = (power: number, noLoad: number): Step =>
  step("Power that treats fibre", difference(power, noLoad), "kW");

const whereItGoes = (power: number, noLoad: number) =>
  stack("Where the power goes", "kW", [
    { label: "treats fibre", value: difference(power, noLoad).value },
    { label: "turns the rotor", value: noLoad },
  ]);
