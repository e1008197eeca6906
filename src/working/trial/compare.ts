import { batchMeans } from "../../model/batches/batch-means";
import type { Label } from "../../model/batches/groups";
import { type ComparedLevel, type Comparison, compareWithControl } from "../../model/trial/compare";
import { difference, product, quotient, squareRoot, sum } from "../expression";
import { bars, percent, short } from "../picture";
import { listed } from "../sentence";
import { each, found, line, type Step, step, type Value, type Working } from "../step";

export function compare(
  levels: readonly Label[],
  values: readonly number[],
  blocks: readonly Label[] | undefined,
  batches: readonly Label[] | undefined,
  control: Label | undefined,
  alpha: number,
): Working {
  const comparison = compareWithControl(levels, values, blocks, batches, control, alpha);
  const means = batchMeans(levels, values, blocks, batches);
  const blockCount = new Set(means.blocks).size;
  const averaged: Step = {
    kind: "table",
    what: "Batches: the values of each averaged to one",
    columns: ["level", ...(blocks === undefined ? [] : ["block"]), "mean of the batch"],
    rows: Array.from(means.values, (mean, i) => [
      means.levels[i] as Label,
      ...(blocks === undefined ? [] : [means.blocks[i] as Label]),
      mean,
    ]),
  };
  return {
    says: inWords(comparison, alpha),
    steps: [
      ...(batches === undefined ? [] : [averaged]),
      step(
        blockCount > 1
          ? "Degrees of freedom: batches, less levels, less blocks beyond the first"
          : "Degrees of freedom: batches, less levels",
        difference(
          means.values.length,
          comparison.levels.length,
          ...(blockCount > 1 ? [blockCount - 1] : []),
        ),
        "",
      ),
      found(
        blockCount > 1
          ? "Standard deviation from batch to batch, levels and blocks taken out"
          : "Standard deviation from batch to batch, levels taken out",
        comparison.deviation,
        "",
      ),
      standardErrors(comparison),
      found(
        `t that chance alone lets any difference pass in ${percent(alpha)} of trials (many-to-one)`,
        comparison.critical,
        "",
      ),
      {
        kind: "table",
        what: "Each level: its difference from the control, with limits t · standard error to both sides",
        columns: [
          "level",
          "batches",
          "mean",
          "standard deviation",
          "difference",
          "lower",
          "upper",
          "p",
        ],
        rows: comparison.levels.map(row),
      },
    ],
    picture: differences(comparison),
    remarks: remarks(comparison, batches === undefined),
  };
}

function standardErrors({ levels, control, deviation, isComplete }: Comparison): Step {
  const own = levels.find(({ level }) => level === control) as ComparedLevel;
  return each(
    isComplete
      ? "Standard error of each difference"
      : "Standard error of each difference, by least squares within the blocks",
    levels
      .filter(({ against }) => against !== undefined)
      .map(({ level, batches, against }) =>
        line(
          String(level),
          product(
            deviation,
            squareRoot(
              isComplete
                ? sum(quotient(1, batches), quotient(1, own.batches))
                : (against?.spread as number),
            ),
          ),
          "",
        ),
      ),
  );
}

function row({ level, batches, mean, deviation, against }: ComparedLevel): readonly Value[] {
  const { estimate, lower, upper, p } = against ?? { estimate: "", lower: "", upper: "", p: "" };
  return [level, batches, mean, deviation ?? "", estimate, lower, upper, p];
}

const differences = ({ levels, control }: Comparison) =>
  bars(
    `Difference from ${control}, with limits`,
    "",
    levels.flatMap(({ level, against }) =>
      against === undefined
        ? []
        : [
            {
              label: String(level),
              value: against.estimate,
              low: against.lower,
              high: against.upper,
            },
          ],
    ),
  );

function inWords({ levels, control }: Comparison, alpha: number): string {
  const shown = levels.flatMap(({ level, against }) =>
    against !== undefined && against.p < alpha ? [{ level, ...against }] : [],
  );
  if (shown.length === 0) return `No level is shown to differ from ${control}.`;
  const differences = listed(
    shown,
    ({ level, estimate, lower, upper }) =>
      `${level} by ${short(estimate)} (${short(lower)} to ${short(upper)})`,
  );
  return `Shown to differ from ${control}: ${differences}.`;
}

function remarks({ levels, isComplete }: Comparison, isEachItsOwn: boolean): readonly string[] {
  return [
    ...(isComplete
      ? []
      : [
          "Not every block holds the levels alike: they are compared within the blocks that hold them, and the means are those that whole blocks would be expected to give.",
        ]),
    "A level that is not shown to differ is not shown to be equal: look at how far its limits reach.",
    ...(isEachItsOwn
      ? [
          "Every value counts as a batch of its own. Where sheets or strips of one batch stand here, give their batches: counted as replicates they raise false alarms four times in ten.",
        ]
      : []),
    ...(levels.length > 2
      ? ["Limits and p allow for the number of levels, as separate t tests would not."]
      : []),
  ];
}
