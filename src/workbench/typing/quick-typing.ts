/** What the grid does at each key in a formula, done once and not many times: a long one stays quick to write. */
import { keepFrames } from "./frames";
import { drawOnce } from "./layers";
import { layOutOwnText } from "./texts";

export function typeQuickly(): void {
  drawOnce();
  keepFrames();
  layOutOwnText();
}
