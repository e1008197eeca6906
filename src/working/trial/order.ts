import { counted } from "../../model/figure";
import { runOrder } from "../../model/trial/run-order";
import type { Vector } from "../../model/vectors";
import { product } from "../expression";
import { type Runs, short } from "../picture";
import { listed } from "../sentence";
import { step, type Working } from "../step";

/** More runs than that no picture can tell apart. */
const MOST_SHOWN = 200;

export function order(doses: Vector, replicates: number, seed: number): Working {
  const given = Array.from(doses);
  const runs = runOrder(given, replicates, seed);
  const first = runs.filter(([block]) => block === 1);
  return {
    says: `${counted(runs.length, "run")} in ${counted(replicates, "block")}; the first one in kg/t: ${listed(first, ([, , dose]) => short(dose))}.`,
    steps: [
      step("Runs in all: doses · blocks", product(given.length, replicates), "runs"),
      {
        kind: "table",
        what: "Every dose once in each block, each block in an order of its own, drawn from the seed",
        columns: ["block", "run", "dose [kg/t]"],
        rows: runs,
      },
    ],
    picture: byBlock(runs, given.length),
    remarks: [
      ...(replicates === 1
        ? ["One block holds one batch of each dose: nothing will tell how much batches vary."]
        : []),
      ...(given.includes(0)
        ? []
        : ["There is no blank among the doses: without one nothing says what the additive adds."]),
      "A block is what stays alike for its runs: a day, a make-up of stock. Each run is a batch of its own, not one more sheet.",
    ],
  };
}

/** Whole blocks, as many as a picture can hold, and at least the first. */
function byBlock(runs: readonly (readonly [number, number, number])[], perBlock: number): Runs {
  const shown = Math.max(1, Math.floor(MOST_SHOWN / perBlock));
  const first = runs.filter(([block, run]) => block <= shown && run <= MOST_SHOWN);
  const blocks = [...new Set(first.map(([block]) => block))].map((block) => {
    const own = first.filter((run) => run[0] === block).map(([, , dose]) => short(dose));
    return `block ${block} runs ${own.join(", ")} kg/t`;
  });
  const isPart = first.length < runs.length;
  const title = isPart ? `Order of the first ${first.length} runs` : "Order of the runs";
  return {
    kind: "runs",
    title,
    alt: `${title}: ${blocks.join("; ")}.`,
    x: { label: "run", unit: "" },
    y: { label: "dose", unit: "kg/t" },
    runs: first.map(([block, run, value]) => ({ block: `block ${block}`, run, value })),
  };
}
