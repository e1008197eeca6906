import { additives } from "../harrow-fen/additives";

/** The first-pass retention of the four places: fibre, fines, filler, dissolved. */
export const loops =
  "WETEND.RETENTION.LOOP(VSTACK({furnish.firstPass},{dissolvedPass}),{recycled},{degraded})";

/** Where an additive goes, down the stock line, by the positions in a column or row of four. */
export const walk = (key: string, dose: string, positions: string, others: string) =>
  `WETEND.PARTITION.ORDERED(${dose},${positions},${others},{places.consistency},{furnish.share},{furnish.surface},{sites.${key}Capacity},{sites.${key}HalfLoad})`;

/** All additives by the order that is used: a row an additive, a column a place. */
export const walks = `TRANSPOSE(HSTACK(${additives
  .map(({ key }, index) =>
    walk(
      key,
      `INDEX({additives.dose},${index + 1})`,
      "INDEX({positions},1,1)",
      "DROP({positions},,1)",
    ),
  )
  .join(",")}))`;
