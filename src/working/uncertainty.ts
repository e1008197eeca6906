import { counted } from "../model/figure";
import { normalQuantile } from "../model/numerics/normal";
import { type Driver, drivers } from "../model/uncertainty/drivers";
import { type SampleShape, sample } from "../model/uncertainty/sample";
import { coverageRanks, summarise } from "../model/uncertainty/summary";
import { difference, power, product, quotient, sum, valued } from "./expression";
import { bars, percent, short } from "./picture";
import { listed } from "./sentence";
import { each, found, line, type Step, step, type Working } from "./step";

/** Fewer values than that give rough limits; ten thousand give them two sound digits (JCGM 101). */
const MANY = 10_000;
/** More inputs than that no picture has room for. */
const MOST_BARS = 20;

export const uncertainty = {
  "UNCERTAINTY.SAMPLE": (
    low: number,
    likely: number,
    high: number,
    count: number,
    seed: number,
    shape: SampleShape,
    stream: number,
  ): Working => {
    const values = sample(low, likely, high, count, seed, shape, stream);
    const isLikelyUsed = shape !== "uniform";
    const reach = `from ${short(low)} to ${short(high)}${isLikelyUsed ? ` about ${short(likely)}` : ""}`;
    return {
      says: `${counted(count, "value")}, ${shape}, ${reach}.`,
      steps: [
        step("Chance of each slice that one value is drawn from", quotient(1, count), "fraction"),
        ...distributionStep(low, likely, high, shape),
        {
          kind: "table",
          what: "The values, in random order",
          columns: ["sample"],
          rows: Array.from(values, (value) => [value]),
        },
      ],
      picture: {
        kind: "distribution",
        title: "The sample",
        alt: `The sample: ${count} values, ${shape}, ${reach}.`,
        x: { label: "value", unit: "" },
        values: Array.from(values),
        lines: [
          { label: "low", value: low },
          ...(isLikelyUsed ? [{ label: "likely", value: likely }] : []),
          { label: "high", value: high },
        ],
      },
      remarks: [
        `This is stream ${stream} of seed ${seed}. Another quantity of the same calculation takes another stream, else the two rise and fall together.`,
        ...(shape === "normal"
          ? ["One value in twenty lies outside low and high: a normal has tails."]
          : []),
      ],
    };
  },

  "UNCERTAINTY.SUMMARY": (
    { numbers, errors }: { readonly numbers: readonly number[]; readonly errors: number },
    coverage: number,
  ): Working => {
    const count = numbers.length;
    const said = summarise(numbers, coverage);
    const { inside, start } = coverageRanks(count, coverage);
    const total = numbers.reduce((all, value) => all + value, 0);
    return {
      says: `On average ${short(said.mean)}; ${percent(coverage)} of the values lie between ${short(said.lower)} and ${short(said.upper)}.`,
      steps: [
        found("Values that are numbers", count, "values"),
        step(
          "Places that the interval spans: coverage · values, to the nearest whole number",
          valued(product(coverage, count), inside),
          "values",
        ),
        each("With the values in order, and equal chances outside, it runs", [
          line("from value number", start + 1, ""),
          line("to value number", sum(start + 1, inside), ""),
        ]),
        each("What the values say", [
          line("mean", valued(quotient(total, count), said.mean), ""),
          line("standard uncertainty", said.standardUncertainty, ""),
          line("median", said.median, ""),
          line("lower limit", said.lower, ""),
          line("upper limit", said.upper, ""),
          line("shortest interval, lower limit", said.shortestLower, ""),
          line("shortest interval, upper limit", said.shortestUpper, ""),
          line("values that were errors", errors, ""),
        ]),
      ],
      picture: {
        kind: "distribution",
        title: "The results",
        alt: `The results: mean ${short(said.mean)}, ${percent(coverage)} of them between ${short(said.lower)} and ${short(said.upper)}.`,
        x: { label: "result", unit: "" },
        values: numbers,
        lines: [
          { label: "lower limit", value: said.lower },
          { label: "mean", value: said.mean },
          { label: "upper limit", value: said.upper },
        ],
      },
      remarks: [
        ...(errors > 0
          ? [
              `${errors} of ${count + errors} values are errors and are left out: the inputs reach where the formula has no answer, and what is left flatters.`,
            ]
          : []),
        ...(count < MANY
          ? [`Limits from ${count} values are rough: two sound digits take ten thousand.`]
          : []),
      ],
    };
  },

  "UNCERTAINTY.DRIVERS": (
    results: readonly number[],
    inputs: readonly (readonly number[])[],
    names: readonly (number | string)[] | undefined,
  ): Working => {
    const ranked = drivers(results, inputs, names);
    const explained = sum(...ranked.map(({ rankCorrelation }) => power(rankCorrelation, 2)));
    return {
      says: `Of the spread ${listed(ranked, ({ input, share }) => `${input} explains ${percent(share)}`)}.`,
      steps: [
        step("Squares of the rank correlations together", explained, ""),
        {
          kind: "table",
          what:
            explained.value > 1
              ? "Each input, largest first; the shares are scaled, since the squares make more than 1"
              : "Each input, largest first; the share is the square of the correlation",
          columns: ["input", "rank correlation", "share of the spread [fraction]"],
          rows: ranked.map(({ input, rankCorrelation, share }) => [input, rankCorrelation, share]),
        },
      ],
      picture: bars(
        "Rank correlation of the result with each input",
        "",
        ranked.slice(0, MOST_BARS).map(({ input, rankCorrelation }) => ({
          label: String(input),
          value: rankCorrelation,
        })),
      ),
      remarks: driverRemarks(ranked, explained.value, results.length),
    };
  },
};

function distributionStep(
  low: number,
  likely: number,
  high: number,
  shape: SampleShape,
): readonly Step[] {
  const width = difference(high, low);
  if (shape === "triangular" && high > low) {
    const below = quotient(difference(likely, low), width);
    return [step("Chance of a value below the likely one", below, "fraction")];
  }
  if (shape === "normal") {
    const deviation = quotient(width, product(2, normalQuantile(0.975)));
    return [step("Standard deviation, with 95 % from low to high", deviation, "unit of low")];
  }
  return [];
}

function driverRemarks(
  ranked: readonly Driver[],
  explained: number,
  results: number,
): readonly string[] {
  const chance = 2 / Math.sqrt(results - 1);
  const idle = ranked.filter(({ rankCorrelation }) => rankCorrelation === 0);
  return [
    explained > 1
      ? "The inputs go together, so that they claim the same spread twice."
      : `No input alone explains the last ${percent(1 - explained)} of the spread.`,
    `With ${results} results a correlation within ±${short(Math.min(1, chance))} may be chance.`,
    ...(idle.length > 0
      ? [
          `No relation, or an input that never changes: ${idle.map(({ input }) => input).join(", ")}.`,
        ]
      : []),
  ];
}
