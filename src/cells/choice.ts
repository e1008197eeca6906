import { impossible } from "../model/refusal";
import type { Argument } from "./argument";
import { type Cell, type Cells, isOmitted } from "./cell";
import { shorten } from "./shorten";
import { singleCell } from "./single-cell";
import { line, type Vector } from "./vector";

/** One word out of a list, matched without regard to case. */
export function choice<W extends string>(
  name: string,
  words: readonly W[],
  fallback?: NoInfer<W>,
): Argument<W> {
  const give = `Give one of: ${words.join(", ")}.`;
  return {
    name,
    read(cells) {
      if (isOmitted(cells)) return fallback ?? impossible(`${name} is missing. ${give}`);
      const value = singleCell(name, cells as Cells);
      const wanted = typeof value === "string" ? value.trim().toLowerCase() : undefined;
      const found = words.find((word) => word.toLowerCase() === wanted);
      return found ?? impossible(`${name} is ${quote(value)}. ${give}`);
    },
  };
}

/** A row or a column of such words, or one that stands for all. */
export function choices<W extends string>(
  name: string,
  size: string,
  words: readonly W[],
  fallback: NoInfer<W>,
): Argument<readonly W[]> & Pick<Vector, "size" | "oneForAll" | "paired"> {
  return {
    name,
    size,
    oneForAll: true,
    paired: false,
    read(cells) {
      if (isOmitted(cells)) return [fallback];
      const given = line(name, cells as Cells);
      return given.map((cell, i) => {
        const place = given.length === 1 ? name : `${name} (${i + 1} of ${given.length})`;
        return choice(place, words).read([[cell]]);
      });
    },
  };
}

const FLAGS: ReadonlyMap<unknown, boolean> = new Map<unknown, boolean>([
  [1, true],
  [0, false],
  ["true", true],
  ["false", false],
]);

/** TRUE or FALSE, as a Boolean or a text; 1 and 0 stand for them. */
export function flag(name: string, fallback: boolean): Argument<boolean> {
  return {
    name,
    read(cells) {
      if (isOmitted(cells)) return fallback;
      const value = singleCell(name, cells as Cells);
      if (typeof value === "boolean") return value;
      const meant = FLAGS.get(typeof value === "string" ? value.trim().toLowerCase() : value);
      return meant ?? impossible(`${name} is ${quote(value)}. Give TRUE or FALSE.`);
    },
  };
}

/** No name, property or chemical formula is longer: what is, was put there by mistake. */
const LONGEST_TEXT = 255;

/** A text that must be given. */
export function text(name: string, what: string): Argument<string> {
  return {
    name,
    read(cells) {
      return readText(name, what, cells) ?? impossible(`${name} is missing. Give ${what}.`);
    },
  };
}

/** A text that may be left out. */
export function optionalText(name: string, what: string): Argument<string | undefined> {
  return { name, read: (cells) => readText(name, what, cells) };
}

function readText(name: string, what: string, cells: Cells | null): string | undefined {
  if (isOmitted(cells)) return undefined;
  const value = singleCell(name, cells as Cells);
  if (typeof value !== "string") impossible(`${name} is ${quote(value)}. Give ${what}.`);
  if (value.length > LONGEST_TEXT)
    impossible(`${name} is a text of ${value.length} characters. Give ${what}.`);
  return value.trim() === "" ? undefined : value.trim();
}

function quote(value: Cell): string {
  if (typeof value === "string") return `"${shorten(value)}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? String(value) : "no plain value";
}
