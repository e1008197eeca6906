import type { Vector } from "../../model/vectors";
import { at } from "../at";
import { product, quotient, sum } from "../expression";
import { percent, short, stack } from "../picture";
import { listed } from "../sentence";
import { each, step, type Working } from "../step";
import { eachComponent, partsOf } from "./components";

export function area(shares: Vector, surfaces: Vector, affinities?: Vector): Working {
  const pull = (i: number) =>
    affinities === undefined
      ? product(at(shares, i), at(surfaces, i))
      : product(at(shares, i), at(surfaces, i), at(affinities, i));
  const pulls = eachComponent(shares.length, "relative", pull);
  const total = sum(...pulls.map(({ value }) => Number(value)));
  const onEach = eachComponent(shares.length, "fraction", (i) => quotient(pull(i), total.value));
  return {
    says: `Of the additive ${listed(partsOf(onEach), ({ label, value }) => `${percent(value)} go to ${label}`)}.`,
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
  const against = eachComponent(measured.length, "relative", (i) =>
    quotient(perSurface(i).value, first),
  );
  const others = partsOf(against).slice(1);
  const words = listed(others, ({ label, value }) => `${label} ${short(value)} times`);
  return {
    ...(others.length > 0 && {
      says: `As strong as that of component 1, for the same surface, is the pull of ${words}.`,
    }),
    steps: [
      each("Found per unit of surface", eachComponent(measured.length, "relative", perSurface)),
      each("Against the first component", against),
    ],
  };
}
