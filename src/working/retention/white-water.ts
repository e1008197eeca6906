import { whiteWaterConcentration } from "../../model/retention/white-water";
import { difference, exponential, negative, product, quotient, sum, valued } from "../expression";
import { amount, type Curves, pictured, sampled } from "../picture";
import { type Step, step, type Working } from "../step";

export function whiteWater(
  load: number,
  purge: number,
  volume: number | undefined,
  hours: number | undefined,
  decay: number,
): Working {
  const clearance =
    volume === undefined || decay === 0 ? sum(purge) : sum(purge, product(decay, volume));
  const steady = quotient(product(1000, load), clearance);
  const clearing: Step = step("Water cleared each hour", clearance, "m³/h");
  const settling: Step = step("Steady state", steady, "mg/L");
  const remarks = [
    "The purge is the water that leaves for good: the flow around the loop clears nothing.",
  ];
  if (volume === undefined || hours === undefined) {
    return { steps: [clearing, settling], remarks };
  }

  const rate = quotient(clearance, volume);
  const reached =
    clearance.value > 0
      ? product(steady.value, difference(1, exponential(negative(product(rate.value, hours)))))
      : quotient(product(1000, load, hours), volume);
  return {
    steps: [
      clearing,
      ...(clearance.value > 0 ? [settling, step("Share cleared each hour", rate, "1/h")] : []),
      step(
        "Reached from clean water",
        valued(reached, whiteWaterConcentration(load, purge, volume, hours, decay)),
        "mg/L",
      ),
    ],
    ...pictured(() => ({
      ...approach(load, purge, volume, hours, decay),
      ...(clearance.value > 0 ? { level: { label: "steady state", y: steady.value } } : {}),
    })),
    remarks,
  };
}

/** The way from clean water, to twice the time that was asked for. */
function approach(
  load: number,
  purge: number,
  volume: number,
  hours: number,
  decay: number,
): Curves {
  const reached = whiteWaterConcentration(load, purge, volume, hours, decay);
  const points = sampled(0, 2 * hours, (time) =>
    whiteWaterConcentration(load, purge, volume, time, decay),
  );
  return {
    kind: "curves",
    title: "White water from clean",
    alt: `White water from clean: ${amount(reached, "mg/L")} after ${amount(hours, "h")}.`,
    x: { label: "time", unit: "h" },
    y: { label: "dissolved additive", unit: "mg/L" },
    curves: [{ label: "white water", points }],
    here: [hours, reached],
  };
}
