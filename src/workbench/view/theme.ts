import type { Grid } from "../grid/grid";

const dark = matchMedia("(prefers-color-scheme: dark)");

export const isDark = () => dark.matches;

/** The page follows by its style sheet; the grid draws itself and has to be told. */
export const followTheme = ({ api }: Grid): void =>
  dark.addEventListener("change", () => api.toggleDarkMode(dark.matches));
