import { textWidth as usualWidth } from "../../pane/pictures/look";
import type { ChartPicture } from "./picture";
import { textWidth } from "./text-width";

/** The names of the places along an axis: those that have room, cut into lines. */
export interface Places {
  readonly at: readonly number[];
  readonly labels: readonly string[];
}

const LINE = 13;
const MOST_LINES = 3;
const SPACE = 8;
/** No name is cut that fits into so much: a place is left out instead. */
const LEAST = "000 000";

/** `length` is what the axis has for all of its places, `room` for the length of one name. */
export function placesOf(
  { categories }: ChartPicture,
  length: number,
  room: number,
  upright: boolean,
): Places | undefined {
  if (!categories) return undefined;
  const each = length / categories.length;
  const width = upright ? room : each - SPACE;
  const wrapped = categories.map((name) => wrap(name, Math.max(width, usualWidth(LEAST))));
  const needed = upright
    ? LINE * Math.max(1, ...wrapped.map((lines) => lines.length))
    : SPACE + Math.max(0, ...wrapped.flat().map(textWidth));
  // A name for every second, third… place where not all have room.
  const step = Math.max(1, Math.ceil(needed / each - 0.01));
  const at = categories.map((_, index) => index).filter((index) => index % step === 0);
  return { at, labels: at.map((index) => (wrapped[index] as string[]).join("\n")) };
}

/** By the number of letters, so that names of one length are all cut, or none. */
function wrap(name: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of name.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && usualWidth(longer) > width) lines.push(word);
    else lines.splice(-1, 1, longer);
  }
  if (lines.length <= MOST_LINES) return lines;
  return [...lines.slice(0, MOST_LINES - 1), `${lines[MOST_LINES - 1]}…`];
}
