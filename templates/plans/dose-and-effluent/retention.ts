import { furnishArguments } from "../harrow-fen/furnish";

/** Retention at a dose, each population going round the loop at its own first-pass retention. */
export const retentionAt = (dose: string) =>
  `WETEND.RETENTION.OVERALL(WETEND.PARTITION.EQUILIBRIUM(${dose},{consistency},${furnishArguments}),{populations.firstPass},{recycled},{degraded})`;
