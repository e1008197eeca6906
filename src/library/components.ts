import { type Component, describeComponent, leftAt900 } from "./component";
import { type Item, type Typical, typical } from "./entry";

const FINES_RETENTION: Typical = [0.6, 0.4, 0.8, "medium"];
const FILLER_RETENTION: Typical = [0.5, 0.3, 0.8, "medium"];
const CELLULOSE_ASH = typical([0.004, 0.001, 0.01, "medium"], "fraction", "At 900 °C.");

const CARBONATE_ASH = leftAt900(
  "CaCO3",
  "CaO",
  "Stoichiometry: carbon dioxide leaves. At 525 °C carbonate stays whole (ISO 1762; ISO 2144).",
);

const WRITTEN: readonly Component[] = [
  {
    name: "Bleached kraft fibre, refined",
    kind: "fibre",
    surface: [1.5, 1, 3, "medium"],
    capacity: [13, 7, 20, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-5, -10, -2, "medium"],
    retention: [0.97, 0.95, 0.99, "high"],
    ash: CELLULOSE_ASH,
  },
  {
    name: "Mechanical-pulp fibre",
    kind: "fibre",
    surface: [1.5, 1, 3, "low"],
    capacity: [13, 7, 25, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-15, -25, -8, "low"],
    retention: [0.97, 0.95, 0.99, "high"],
    ash: CELLULOSE_ASH,
  },
  {
    name: "Recycled fibre",
    kind: "fibre",
    surface: [1.2, 0.7, 2.5, "low"],
    capacity: [13, 7, 25, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-8, -20, -3, "low"],
    retention: [0.96, 0.93, 0.99, "medium"],
    ash: CELLULOSE_ASH,
  },
  {
    name: "Primary fines",
    kind: "fines",
    surface: [6, 4, 8, "medium"],
    capacity: [12, 6, 20, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-20, -60, -8, "low"],
    retention: FINES_RETENTION,
    ash: CELLULOSE_ASH,
  },
  {
    name: "Secondary fines",
    kind: "fines",
    surface: [12, 8, 20, "low"],
    capacity: [10, 5, 18, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-30, -80, -10, "low"],
    retention: FINES_RETENTION,
    ash: CELLULOSE_ASH,
  },
  {
    name: "Mechanical-pulp fines, flakes",
    kind: "fines",
    surface: [6, 4, 8, "medium"],
    capacity: [10, 5, 18, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-40, -100, -15, "low"],
    retention: FINES_RETENTION,
    ash: CELLULOSE_ASH,
  },
  {
    name: "Mechanical-pulp fines, fibrils",
    kind: "fines",
    surface: [14, 10, 20, "low"],
    capacity: [8, 4, 15, "low"],
    halfLoad: [10, 1, 20, "low"],
    charge: [-50, -120, -20, "low"],
    retention: FINES_RETENTION,
    ash: CELLULOSE_ASH,
  },
  {
    name: "Kaolin",
    kind: "filler",
    surface: [10, 6, 15, "medium"],
    capacity: [1.2, 0.5, 2, "low"],
    halfLoad: [5, 1, 20, "low"],
    charge: [-10, -40, -3, "low"],
    retention: FILLER_RETENTION,
    ash: leftAt900(
      "Al2Si2O5(OH)4",
      "Al2Si2O7",
      "Stoichiometry of kaolinite: two waters leave. ISO 2144 gives 86 to 89 % for clay.",
      0.89,
    ),
  },
  {
    name: "Ground calcium carbonate",
    kind: "filler",
    surface: [6, 2, 12, "medium"],
    capacity: [0.8, 0.3, 1.5, "low"],
    halfLoad: [5, 1, 20, "low"],
    charge: [-5, -20, 5, "low"],
    retention: FILLER_RETENTION,
    ash: CARBONATE_ASH,
  },
  {
    name: "Precipitated calcium carbonate",
    kind: "filler",
    surface: [8, 5, 12, "medium"],
    capacity: [0.8, 0.3, 1.5, "low"],
    halfLoad: [5, 1, 20, "low"],
    charge: [0, -10, 10, "low"],
    retention: FILLER_RETENTION,
    ash: CARBONATE_ASH,
  },
  {
    name: "Talc",
    kind: "filler",
    surface: [9, 3, 16, "low"],
    capacity: [0.7, 0.3, 1.5, "low"],
    halfLoad: [10, 1, 30, "low"],
    charge: [-3, -10, 0, "low"],
    retention: FILLER_RETENTION,
    ash: leftAt900("Mg3Si4O10(OH)2", "Mg3Si4O11", "Stoichiometry of talc: one water leaves."),
  },
  {
    name: "Titanium dioxide",
    kind: "filler",
    surface: [10, 7, 15, "medium"],
    capacity: [1.2, 0.5, 2, "low"],
    halfLoad: [5, 1, 20, "low"],
    charge: [-10, -40, -2, "low"],
    retention: FILLER_RETENTION,
    ash: leftAt900("TiO2", "TiO2", "Stoichiometry: an oxide loses nothing."),
  },
];

/** Fibre, fines and fillers, in the order in which they are listed. */
export const COMPONENTS: readonly Item[] = WRITTEN.map(describeComponent);
