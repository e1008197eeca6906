/** The colours of the grid. */
import { defaultTheme } from "@univerjs/themes";

/** One accent for everything that the grid marks; its lighter and darker steps are mixed from it. */
const accent = {
  50: "#f2f8f8",
  100: "#e7f3f2",
  200: "#c5e0de",
  300: "#9cc9c6",
  400: "#4f9b98",
  500: "#23807f",
  600: "#0b6e6e",
  700: "#095c5c",
  800: "#074a4a",
  900: "#053838",
};

/** What a formula that is being typed reads, in its text and around the cells: steps that can be read on white, and inverted on black. */
const references = [
  "blue.700",
  "pink.700",
  "green.600",
  "purple.800",
  "orange.700",
  "jiqing.700",
  "yellow.800",
  "red.700",
  "blue.800",
  "green.800",
  "pink.800",
  "gray.600",
] as const;

export const gridTheme = {
  ...defaultTheme,
  primary: accent,
  indigo: accent,
  "loop-color": Object.fromEntries(references.map((colour, index) => [index + 1, colour])),
} as typeof defaultTheme;
