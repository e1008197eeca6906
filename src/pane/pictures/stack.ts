import { barX, plot, stackX, text } from "@observablehq/plot";
import type { Stack } from "../../working/picture";
import { ACCENT, INK, look, PAPER } from "./look";

const HEIGHT = 56;
/** Narrower than this a part has no room for its number. */
const ROOM_FOR_NUMBER = 14;

/** One bar, its parts numbered as the key below it is; dark and light parts take turns. */
export function drawStack({ parts }: Stack, width: number): Element {
  const whole = parts.reduce((sum, { value }) => sum + Math.max(0, value), 0);
  const drawn = parts.map((part, i) => ({ ...part, value: Math.max(0, part.value), i }));
  const isNumbered = ({ value }: { value: number }) => (value / whole) * width > ROOM_FOR_NUMBER;
  const isDark = ({ i }: { i: number }) => i % 2 === 0;
  return plot({
    ...look(width),
    height: HEIGHT,
    margin: 0,
    marginTop: 8,
    marginBottom: 8,
    x: { axis: null, domain: [0, whole === 0 ? 1 : whole], range: [1, width - 1] },
    marks: [
      barX(
        drawn,
        stackX({
          x: "value",
          fill: (part) => (isDark(part) ? ACCENT : PAPER),
          stroke: INK,
          strokeWidth: 1,
        }),
      ),
      text(
        drawn,
        stackX({
          x: "value",
          text: (part) => (isNumbered(part) ? String(part.i + 1) : ""),
          fill: (part) => (isDark(part) ? PAPER : INK),
          fontWeight: 600,
        }),
      ),
    ],
  });
}
