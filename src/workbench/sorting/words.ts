import type { Direction } from "./order";

export const directions: readonly Direction[] = ["ascending", "descending"];

/** For the grid's own menus, which look words up. */
export const sortingWords = {
  dosewright: { sort: { ascending: "Sort ascending", descending: "Sort descending" } },
} satisfies { dosewright: { sort: Record<Direction, string> } };
