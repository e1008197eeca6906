import type { Style } from "../book";

/** One ink, one accent, units in grey; what asks for attention has a colour and a weight of its own. */
export const palette = {
  ink: "#1f2a33",
  grey: "#66727c",
  accent: "#0b6e6e",
  accentPale: "#e7f3f2",
  accentLine: "#a9d0cd",
  headerFill: "#e9edf0",
  hairline: "#b9c2c9",
  gridline: "#dde2e6",
} as const;

const header = {
  bold: true,
  ink: palette.ink,
  fill: palette.headerFill,
  wrap: true,
  border: { bottom: palette.ink },
} as const satisfies Style;

/** How each kind of cell looks, in the file, in the grid and where the pane inserts it. */
export const looks = {
  title: { bold: true, size: 18, ink: palette.ink },
  heading: { bold: true, size: 13, ink: palette.accent },
  body: { ink: palette.ink },
  note: { italic: true, ink: palette.grey },
  caution: { bold: true, ink: "#8a3b00", fill: "#fff3e2" },
  label: { ink: palette.ink },
  unit: { ink: palette.grey, indent: 1 },
  header,
  /** Stands over numbers, on their side of the column. */
  numberHeader: { ...header, align: "right" },
  input: { ink: palette.accent, fill: palette.accentPale, border: { bottom: palette.accentLine } },
  result: { ink: palette.ink },
  /** An answer in words, above and below numbers. */
  word: { ink: palette.ink, align: "right" },
  headline: {
    bold: true,
    size: 13,
    ink: palette.ink,
    align: "right",
    border: { bottom: palette.accent },
  },
} as const satisfies Record<string, Style>;

export type Look = keyof typeof looks;

/** What a conditional format puts over a cell. */
export const ruleLooks = {
  breach: { bold: true, ink: "#9c1c12", fill: "#fbe3e0" },
  warning: { ink: "#7a5200", fill: "#fdf1cf" },
  good: { ink: "#1d6b34", fill: "#e1f2e5" },
} as const satisfies Record<string, Style>;

/** In the order of the series; each differs in lightness, too, so that a grey print can be read. */
export const seriesColours = [
  "#0b6e6e",
  "#d98e2b",
  "#4d5fa3",
  "#9fc3a6",
  "#7c4f78",
  "#b8bfc5",
] as const;

export const limitColour = "#9c1c12";
