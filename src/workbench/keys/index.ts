/** What keys do that the grid has no way for, or that do not reach it. */
import type { Grid } from "../grid/grid";
import { keepKeys, type PageKeys, takePageKeys } from "./beside-grid";
import { goToEndsOfText } from "./ends-of-text";
import { takeFarKeys } from "./far-keys";
import { selectWholeLines } from "./whole-lines";

export function takeKeys(grid: Grid, ofPage: PageKeys): void {
  keepKeys(grid);
  takePageKeys(ofPage);
  takeFarKeys(grid);
  selectWholeLines(grid);
  goToEndsOfText(grid);
}
