import { ofFurnish } from "./furnish";
import { alternatives, starch } from "./mill";

/**
 * The additives that Harrow Fen compares. Capacities (mg/m²) and half loads (mg/L) are in the order of the
 * furnish. Gain (N·m/g) and scale (kg/t kept on fibre and fines) are typed but for the first, whose response
 * was measured.
 */
export const additives = [
  {
    key: "cationic",
    name: "cationic starch",
    price: starch.activePrice,
    dose: starch.dose,
    most: 12,
    codFactor: starch.codFactor,
    gain: null,
    scale: null,
    capacities: ofFurnish("capacity"),
    halfLoads: ofFurnish("halfLoad"),
  },
  {
    key: "native",
    name: "native starch",
    price: alternatives.nativePrice,
    dose: 16,
    most: 20,
    codFactor: alternatives.nativeCodFactor,
    gain: 6.1,
    scale: 4.5,
    capacities: [0.8, 0.6, 0.2],
    halfLoads: [150, 120, 60],
  },
  {
    key: "guar",
    name: "cationic guar gum",
    price: 2.9,
    dose: 2,
    most: 4,
    codFactor: 1.1,
    gain: 6.5,
    scale: 1.6,
    capacities: [3, 3.5, 0.9],
    halfLoads: [8, 5, 3],
  },
  {
    key: "acrylamide",
    name: "glyoxalated polyacrylamide",
    price: 3.6,
    dose: 2,
    most: 4,
    codFactor: 1.2,
    gain: 8,
    scale: 2,
    capacities: [2.4, 3, 0.8],
    halfLoads: [4, 3, 2],
  },
] as const;

/** First-pass retention on the laboratory's sheet former, which has no closed loop. */
export const sheetFormer = { fibre: 0.98, fines: 0.8, consistency: 0.01 } as const;
