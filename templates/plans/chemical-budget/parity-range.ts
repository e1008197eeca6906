import { addressOf, parseAddress } from "../../../src/workbook/address";
import type { EntryBound, Part } from "../../../src/workbook/plan";
import { down, heading, note, result, sentence } from "../parts/lines";

/** What the price of parity hangs on and nobody knows for sure, each within low and high. */
export const ranges = [
  {
    key: "retention",
    label: "Overall retention of this one",
    low: 0.8,
    high: 0.86,
    limits: [0.001, 1],
    format: "0.0 %",
  },
  {
    key: "otherRetention",
    label: "Overall retention of the other",
    low: 0.1,
    high: 0.3,
    limits: [0.001, 1],
    format: "0.0 %",
  },
  {
    key: "relativeEffect",
    label: "Effect of a kilogram kept",
    low: 0.8,
    high: 1.25,
    limits: [0.01, 100],
    format: "0.00",
  },
] as const;

/** The range as a table: the likely value between low and high is the one that is typed on top. */
function table(at: string): Part[] {
  const { row, column } = parseAddress(at);
  const lines = ranges.flatMap(({ key, label, low, high, limits, format }, index): Part[] => {
    const place = (right: number) => addressOf(row + 1 + index, column + right);
    const likely: EntryBound = { formula: `{${key}}`, words: "the likely value" };
    const end = (right: number, of: "Low" | "High", value: number): Part => ({
      kind: "block",
      at: place(right),
      name: `${key}${of}`,
      label: of,
      look: "input",
      format,
      rows: [[value]],
      allow: {
        number: of === "Low" ? { from: limits[0], to: likely } : { from: likely, to: limits[1] },
      },
      help: `The ${of === "Low" ? "lowest" : "highest"} value you hold possible.`,
    });
    return [
      { kind: "block", at: place(0), look: "label", rows: [[label]] },
      end(1, "Low", low),
      { kind: "block", at: place(2), look: "result", format, rows: [[`={${key}}`]] },
      end(3, "High", high),
    ];
  });
  const headers = ["Known within a range", "Low", "Likely", "High"];
  return [
    {
      kind: "block",
      at,
      firstRow: "header",
      format: ["@", "0.0", "0.0", "0.0"],
      rows: [headers],
    },
    ...lines,
  ];
}

const outside = ranges
  .flatMap(({ key }) => [`{${key}}<{${key}Low}`, `{${key}}>{${key}High}`])
  .join(",");

const limit = (row: number) => `INDEX(WETEND.UNCERTAINTY.SUMMARY({sampleParity}),${row},2)`;

/** Ten rows: whether the price asked lies inside the range of the price of parity. */
export function parityRange(at: string): Part[] {
  const { row, column } = parseAddress(at);
  const below = (rows: number) => addressOf(row + rows, column);
  return [
    ...down(at, [heading("How sure that is")]),
    ...table(below(1)),
    ...down(below(3 + ranges.length), [
      result("parityLow", "Worth in 95 % of the samples, from", "money/kg", "0.000", limit(4)),
      result("parityHigh", "to", "money/kg", "0.000", limit(5)),
      sentence(
        `IF(OR(${outside}),"A likely value lies outside its low and high: widen them.",IF({otherPrice}<{parityLow},"Settled: the price asked lies below that range, so the other one is cheaper.",IF({otherPrice}>{parityHigh},"Settled: the price asked lies above that range, so this additive is cheaper.","Not settled: the price asked lies inside that range.")))`,
      ),
      note(
        "A thousand draws, most of them near the likely values: see the sheet Parity samples. Prices, the charge and the oxygen demands are taken as given.",
        5,
      ),
    ]),
  ];
}
