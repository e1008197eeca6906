import type { Vector } from "../../model/vectors";
import { product, quotient, sum } from "../expression";
import { stack } from "../picture";
import { each, step, type Working } from "../step";
import { at, eachComponent, partsOf } from "./components";

export function area(shares: Vector, surfaces: Vector, affinities?: Vector): Working {
  const pull = (i: number) =>
    affinities === undefined
      ? product(at(shares, i), at(surfaces, i))
      : product(at(shares, i), at(surfaces, i), at(affinities, i));
  const pulls = eachComponent(shares.length, "relative", pull);
  const total = sum(...pulls.map(({ value }) => Number(value)));
  const onEach = eachComponent(shares.length, "fraction", (i) => quotient(pull(i), total.value));
  return {
    steps: [
      each(
        affinities === undefined
          ? "Surface of each component: share × surface"
          : "Pull of each component: share × surface × affinity",
        pulls,
      ),
      step("All components together", total, "relative"),
      each("Share of the additive on each component", onEach),
    ],
    picture: stack("Where the additive goes", "fraction", partsOf(onEach)),
    remarks: [
      "Holds while sites are plenty: near the dose that fills them see PARTITION.EQUILIBRIUM.",
      ...(affinities === undefined
        ? ["Every square metre is taken to pull alike: a beaker test tells (PARTITION.AFFINITY)."]
        : []),
    ],
  };
}

export function affinity(measured: Vector, shares: Vector, surfaces: Vector): Working {
  const perSurface = (i: number) =>
    quotient(at(measured, i), product(at(shares, i), at(surfaces, i)));
  const first = perSurface(0).value;
  return {
    steps: [
      each("Found per unit of surface", eachComponent(measured.length, "relative", perSurface)),
      each(
        "Against the first component",
        eachComponent(measured.length, "relative", (i) => quotient(perSurface(i).value, first)),
      ),
    ],
  };
}
