import { orderedPartition, orderedWalk } from "../../model/partition/ordered";
import type { Vector } from "../../model/vectors";
import { product, sum } from "../expression";
import { stack } from "../picture";
import { each, line, type Step, type Working } from "../step";
import { component, DISSOLVED, namedParts, partsOf, whereItIs } from "./components";
import { sites } from "./equilibrium";

export function ordered(
  doses: Vector,
  dosePositions: Vector,
  componentPositions: Vector,
  consistencies: Vector,
  shares: Vector,
  surfaces: Vector,
  capacities: Vector,
  halfLoads: Vector,
  transfer: number,
): Working {
  const given = [
    doses,
    dosePositions,
    componentPositions,
    consistencies,
    shares,
    surfaces,
    capacities,
    halfLoads,
  ] as const;
  const stages = orderedWalk(...given);
  const last = stages.at(-1);
  const walked = last === undefined ? [] : [...last.held, last.dissolved];
  const settled = orderedPartition(...given, 1);
  const answer = namedParts(walked).map(({ label, value }, i) =>
    line(
      label,
      transfer === 0
        ? value
        : sum(product(1 - transfer, value), product(transfer, settled[i] as number)),
      "kg/t",
    ),
  );
  const walk: Step = {
    kind: "table",
    what: "Downstream, position by position: held on each component, and dissolved [kg/t]",
    columns: [
      "position",
      ...Array.from({ length: shares.length }, (_, i) => component(i)),
      DISSOLVED,
      "dissolved [mg/L]",
    ],
    rows: stages.map(({ position, held, dissolved, concentration }) => [
      position,
      ...held,
      dissolved,
      concentration,
    ]),
  };
  return {
    says: `At the end, ${whereItIs(partsOf(answer))}`,
    steps: [
      sites(shares, surfaces, capacities),
      walk,
      ...(transfer === 0
        ? []
        : [
            each(
              "If all of it could change places: the equilibrium at the last consistency",
              namedParts(settled).map(({ label, value }) => line(label, value, "kg/t")),
            ),
          ]),
      each(
        transfer === 0
          ? "Held on each component at the end, and last dissolved"
          : "Both, weighed by the share that changes places",
        answer,
      ),
    ],
    picture: stack("Where the doses go", "kg/t", partsOf(answer)),
    remarks: [
      transfer === 0
        ? "What is held never lets go, as cationic starch hardly does: what joins later takes only what is still dissolved."
        : "A part of the additive changes places, as cationic polyacrylamide does in time; the rest never lets go.",
      "Each position settles before the next: where there are seconds only, see PARTITION.TIMED.",
    ],
  };
}
