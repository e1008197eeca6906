import { counted } from "../../model/figure";
import { doseLadder, type Spacing } from "../../model/trial/ladder";
import { difference, type Expression, power, product, quotient, sum, valued } from "../expression";
import { amount, type Runs, short } from "../picture";
import { each, line, numbered, type Step, step, type Working } from "../step";

/** More doses than that no picture can tell apart. */
const MOST_SHOWN = 60;

export function ladder(
  lowest: number,
  highest: number,
  steps: number,
  spacing: Spacing,
  blank: boolean,
): Working {
  const doses = doseLadder(lowest, highest, steps, spacing, blank);
  const between: Expression =
    spacing === "even"
      ? quotient(difference(highest, lowest), difference(steps, 1))
      : power(quotient(highest, lowest), quotient(1, difference(steps, 1)));
  const first = blank ? 1 : 0;
  const rung = (dose: number, i: number): Expression | number => {
    const place = i - first;
    if (place <= 0 || place === steps - 1) return dose;
    const way =
      spacing === "even"
        ? sum(lowest, product(place, between.value))
        : product(lowest, power(between.value, place));
    return valued(way, dose);
  };
  const distance: Step =
    spacing === "even"
      ? step("Distance between neighbours", between, "kg/t")
      : step("Ratio of neighbours", between, "times");
  return {
    says: `${counted(doses.length, "dose")} from ${short(doses[0] as number)} to ${amount(doses.at(-1) as number, "kg/t")}.`,
    steps: [
      ...(steps > 1 ? [distance] : []),
      each(
        "The doses",
        doses.map((dose, i) =>
          line(i < first ? "blank" : numbered("dose", i - first), rung(dose, i), "kg/t"),
        ),
      ),
    ],
    ...(doses.length <= MOST_SHOWN ? { picture: rungs(doses) } : {}),
    remarks: [
      ...(doses.includes(0)
        ? []
        : ["There is no blank: without one nothing says what the additive adds."]),
      `A response cannot be read beyond ${amount(highest, "kg/t")}: take a highest dose above the one that you expect to use.`,
      "This is the ladder, not the order of running it: rising doses take every drift for their own effect (TRIAL.ORDER).",
    ],
  };
}

const rungs = (doses: readonly number[]): Runs => ({
  kind: "runs",
  title: "The ladder",
  alt: `The ladder: ${doses.map((dose) => amount(dose, "kg/t")).join(", ")}.`,
  x: { label: "step", unit: "" },
  y: { label: "dose", unit: "kg/t" },
  runs: doses.map((value, i) => ({ block: "ladder", run: i + 1, value })),
});
