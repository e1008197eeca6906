import { timedPartition } from "../../model/partition/timed";
import type { Vector } from "../../model/vectors";
import { type Curves, pictured, sampled, short } from "../picture";
import { step, type Working } from "../step";
import { component, DISSOLVED, namedParts, whereItIs } from "./components";
import { sites, waterPerTonne } from "./equilibrium";

type Furnish = [
  dose: number,
  consistency: number,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
  rates: Vector,
];

export function timed(times: Vector, ...furnish: Furnish): Working {
  const [, consistency, shares, surfaces, capacities] = furnish;
  const rows = timedPartition(times, ...furnish);
  const longest = Math.max(...Array.from(times));
  const end = rows[Array.from(times).indexOf(longest)] as number[];
  return {
    says: `After ${short(longest)} s, ${whereItIs(namedParts(end))}`,
    steps: [
      sites(shares, surfaces, capacities),
      step("Water with a tonne of furnish", waterPerTonne(consistency), "m³/t"),
      {
        kind: "table",
        what: "Held on each component, and dissolved, as time passes [kg/t]; the rate equations are solved step by step",
        columns: [
          "time",
          ...Array.from({ length: shares.length }, (_, i) => component(i)),
          DISSOLVED,
        ],
        rows: rows.map((row, i) => [`${short(times[i] as number)} s`, ...row]),
      },
    ],
    ...pictured(() => uptake(longest, furnish)),
  };
}

function uptake(longest: number, furnish: Furnish): Curves {
  const times = sampled(0, longest, (time) => time).map(([time]) => time);
  const rows = timedPartition(times, ...furnish);
  const end = namedParts(rows.at(-1) as number[]);
  return {
    kind: "curves",
    title: "Uptake over time",
    alt: `Uptake over time, after ${short(longest)} s: ${end
      .map(({ label, value }) => `${label} ${short(value)} kg/t`)
      .join(", ")}.`,
    x: { label: "time", unit: "s" },
    y: { label: "additive", unit: "kg/t" },
    curves: end.map(({ label }, i) => ({
      label,
      points: rows.map((row, r) => [times[r] as number, row[i] as number] as const),
    })),
  };
}
