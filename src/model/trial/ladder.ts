import { figure, figureBeside } from "../figure";
import { impossible } from "../refusal";

export const SPACINGS = ["even", "ratio"] as const;
export type Spacing = (typeof SPACINGS)[number];

/**
 * The doses of a trial, from the lowest to the highest: `steps` of them at even distance or at a constant
 * ratio, and the blank (0) before them where it is wanted.
 */
export function doseLadder(
  lowest: number,
  highest: number,
  steps: number,
  spacing: Spacing,
  blank: boolean,
): number[] {
  if (highest < lowest) {
    impossible(
      `Highest is ${figureBeside(highest, lowest)} and lowest ${figureBeside(lowest, highest)} kg/t. Give a highest dose above the lowest.`,
    );
  }
  if (steps === 1 && highest !== lowest) {
    impossible(
      `Steps is 1 from ${figure(lowest)} to ${figure(highest)} kg/t. Give 2 steps or more to span them.`,
    );
  }
  if (steps > 1 && highest === lowest) {
    impossible(
      `Lowest and highest are both ${figure(lowest)} kg/t with ${steps} steps. Give 1 step, or a highest dose above the lowest.`,
    );
  }
  if (lowest === 0 && blank) {
    impossible(
      "Lowest is 0 kg/t, which is the blank. Give the lowest dose above 0, or set blank to FALSE.",
    );
  }
  if (lowest === 0 && spacing === "ratio") {
    impossible("Lowest is 0 kg/t. A constant ratio starts from a dose above 0 kg/t.");
  }
  const dose = (step: number) => {
    const way = step / (steps - 1);
    return spacing === "even"
      ? lowest + (highest - lowest) * way
      : lowest * (highest / lowest) ** way;
  };
  const between = Array.from({ length: Math.max(steps - 2, 0) }, (_, i) => dose(i + 1));
  const doses = steps === 1 ? [lowest] : [lowest, ...between, highest];
  return blank ? [0, ...doses] : doses;
}
