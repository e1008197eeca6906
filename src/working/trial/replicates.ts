import { batchesPerLevel, plannedTest, powerOfBatches } from "../../model/trial/replicates";
import { quotient } from "../expression";
import { type Curves, percent, pictured } from "../picture";
import { found, step, type Working } from "../step";

/** A power is a few milliseconds of quadrature: as many points as show the curve. */
const POINTS = 20;

export function replicates(
  variation: number,
  difference: number,
  power: number,
  alpha: number,
  treatments: number,
): Working {
  const plan = { deviations: difference / variation, alpha, treatments };
  const batches = batchesPerLevel(variation, difference, power, alpha, treatments);
  const around = [batches - 1, batches, batches + 1].filter((number) => number > 1);
  const runs = batches * (treatments + 1);
  return {
    steps: [
      step(
        "The difference in standard deviations from batch to batch",
        quotient(difference, variation),
        "times",
      ),
      {
        kind: "table",
        what: `What a number of batches is worth, with a false alarm in ${percent(alpha)} of trials`,
        columns: ["batches", "degrees of freedom", "t to pass", "power"],
        rows: around.map((number) => {
          const { degrees, critical } = plannedTest(number, plan);
          return [number, degrees, critical, powerOfBatches(number, plan)];
        }),
      },
      found(`The fewest with a power of ${percent(power)} or more`, batches, "batches"),
    ],
    ...pictured(() => powerCurve(batches, power, (number) => powerOfBatches(number, plan))),
    remarks: [
      `That is ${runs} runs in all, the control included.`,
      "A batch is one make-up of treated stock. More sheets of one batch do not replace it, and the variation is that from batch to batch.",
      ...(treatments === 1
        ? ["For one treatment: several that are compared with one control take more."]
        : []),
    ],
  };
}

function powerCurve(batches: number, wanted: number, powerOf: (batches: number) => number): Curves {
  const most = Math.max(4, 2 * batches);
  const numbers = Array.from({ length: POINTS }, (_, i) =>
    Math.round(2 + ((most - 2) * i) / (POINTS - 1)),
  );
  return {
    kind: "curves",
    title: "The chance to show the difference",
    alt: `The chance to show the difference: ${percent(powerOf(batches))} with ${batches} batches of every level.`,
    x: { label: "batches of every level", unit: "" },
    y: { label: "power", unit: "fraction" },
    curves: [
      {
        label: "power",
        points: [...new Set([...numbers, batches])]
          .sort((one, other) => one - other)
          .map((number) => [number, powerOf(number)] as const),
      },
    ],
    here: [batches, powerOf(batches)],
    level: { label: "wanted", y: wanted },
  };
}
