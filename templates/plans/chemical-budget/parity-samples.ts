import type { SheetPlan } from "../../../src/workbook/plan";
import { down, note, wholeNumber } from "../parts/lines";
import { spillColumns } from "../parts/spill-columns";
import { parityPrice } from "./parity-price";
import { ranges } from "./parity-range";

const rows = 1000;
const first = 8;

const column = spillColumns(first, rows);

/** A stream of its own for each, else they rise and fall together. */
const sampleOf = (key: string, stream: number) =>
  `WETEND.UNCERTAINTY.SAMPLE({${key}Low},{${key}},{${key}High},{samples},{seed},"triangular",${stream})`;

const headers = ["Retention", "Retention of the other", "Effect of a kilogram kept"];

export const paritySamplesSheet: SheetPlan = {
  name: "Parity samples",
  widths: { A: 16, B: 16, C: 16, D: 18 },
  freeze: `A${first}`,
  print: { pagesTall: 1, area: "A1:D57" },
  parts: [
    { kind: "text", at: "A1", look: "title", text: "Parity samples" },
    ...down("A2", [
      note("A row is one case that might be yours. The first fifty are printed."),
      null,
      wholeNumber("samples", "Samples", "", rows, {
        from: 40,
        to: rows,
        help: "This sheet has room for a thousand.",
      }),
      wholeNumber("seed", "Seed", "", 7, {
        from: 0,
        to: 4_294_967_295,
        format: "0",
        help: "Any number; the same one gives the same samples on every machine.",
      }),
    ]),
    ...ranges.map(({ key, format }, index) =>
      column(
        "ABC"[index] as string,
        `${key}Samples`,
        headers[index] as string,
        format,
        sampleOf(key, index + 1),
      ),
    ),
    column(
      "D",
      "sampleParity",
      "Worth (money/kg)",
      "0.000",
      parityPrice(
        "{price}",
        "{retentionSamples}",
        "{otherRetentionSamples}",
        "{relativeEffectSamples}",
      ),
    ),
  ],
};
