import type { PlotOptions } from "@observablehq/plot";
import type { Axis } from "../../working/picture";

export const INK = "var(--picture-ink)";
export const FAINT = "var(--picture-faint)";
export const RULE = "var(--picture-rule)";
export const PAPER = "var(--picture-paper)";
export const ACCENT = "var(--picture-accent)";

/** How all pictures look. */
export const look = (width: number): PlotOptions => ({
  width,
  style: { fontFamily: "inherit", fontSize: "12px", background: "transparent", color: FAINT },
});

export const axisLabel = ({ label, unit }: Axis) =>
  unit === "" || unit === "fraction" ? label : `${label} [${unit}]`;

/** Dashes tell the lines apart where colour cannot. */
const DASHES = ["none", "7 3", "2 3", "9 3 2 3", "1 2", "12 4"] as const;
export const dashOf = (i: number) => DASHES[i % DASHES.length] as string;

/** About as many pixels as a text of that size takes. */
export const textWidth = (text: string) => 6.4 * text.length;
