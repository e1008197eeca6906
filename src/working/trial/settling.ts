import { settlingTime } from "../../model/trial/settling";
import { logarithm, product, quotient } from "../expression";
import { amount, type Curves, percent, sampled } from "../picture";
import { step, type Working } from "../step";

export function settling(volume: number, purge: number, remaining: number): Working {
  const turnover = quotient(volume, purge);
  const turnovers = logarithm(quotient(1, remaining));
  const wait = product(turnover.value, turnovers.value);
  return {
    steps: [
      step("Time in which the purge replaces the volume once", turnover, "h"),
      step("Such times until no more than that is missing", turnovers, "times"),
      step("Time to wait", product(turnover.value, turnovers.value), "h"),
    ],
    picture: fading(volume, purge, remaining, wait.value),
    remarks: [
      "The purge is the water that leaves the loop for good: the flow around the loop renews nothing.",
      "One well-mixed volume: chests in series take longer.",
    ],
  };
}

/** The part of the step that is still missing, down to a third of what may remain. */
function fading(volume: number, purge: number, remaining: number, wait: number): Curves {
  const atEnd = Math.log(1 / remaining) + 1;
  const points = sampled(0, atEnd, (turnovers) => Math.exp(-turnovers)).map(
    ([, missing]) => [settlingTime(volume, purge, missing), missing] as const,
  );
  return {
    kind: "curves",
    title: "What is still missing after a step",
    alt: `What is still missing after a step: ${percent(remaining)} after ${amount(wait, "h")}.`,
    x: { label: "time", unit: "h" },
    y: { label: "part of the step still missing", unit: "fraction" },
    curves: [{ label: "white water", points }],
    here: [wait, remaining],
    level: { label: "may be missing", y: remaining },
  };
}
