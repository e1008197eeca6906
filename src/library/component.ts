import { molarMass, readFormula } from "../model/effluent/chemical-formula";
import { described, type Entry, type Item, published, type Typical, typical } from "./entry";

/** What is written down of a component of the furnish. */
export interface Component {
  readonly name: string;
  readonly kind: "fibre" | "fines" | "filler";
  /** Other words of the trade for it. */
  readonly alsoCalled?: readonly string[];
  readonly surface: Typical;
  readonly capacity: Typical;
  readonly halfLoad: Typical;
  readonly charge: Typical;
  readonly retention: Typical;
  readonly ash: Entry;
}

const FOR_STARCH =
  "For cationic starch of DS about 0.035. No published constant was found: calibrate on a beaker test.";

const SURFACE_OF_FINES = published(
  [4, 3, 5],
  "times, by mass",
  "3 to 5 or more times that of the fibre (Hubbe, Mini-Encyclopedia of Papermaking Wet-End Chemistry, Fines).",
);

/** Everything that the library says of a component. */
export function describeComponent(component: Component): Item {
  const { name, kind, alsoCalled = [] } = component;
  const entries: [string, Entry][] = [
    ["kind", described(kind)],
    ["specific surface", typical(component.surface, "m²/g")],
    ["site capacity", typical(component.capacity, "mg/m²", FOR_STARCH)],
    ["half load", typical(component.halfLoad, "mg/L", FOR_STARCH)],
    ["charge", typical(component.charge, "µeq/g", "Of the surface; anionic counts negative.")],
    ["first-pass retention", typical(component.retention, "fraction")],
    ["ash factor", component.ash],
  ];
  if (kind === "fines") entries.push(["surface against fibre", SURFACE_OF_FINES]);
  return { name, kind, alsoCalled, properties: new Map(entries) };
}

/** Share of a mineral that is left at 900 °C, from its formula before and after. */
export function leftAt900(before: string, after: string, source: string, high?: number): Entry {
  const value = molarMass(readFormula(after)) / molarMass(readFormula(before));
  return { value, unit: "fraction", low: value, high: high ?? value, evidence: "computed", source };
}
