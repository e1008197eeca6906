import { difference, type Expression } from "../expression";
import { type Stack, stack } from "../picture";
import type { Line } from "../step";

/** Solids after one pass, of which this share is lost. */
export const afterOnePass = (title: string, lost: Expression): Stack =>
  stack(title, "fraction", [
    { label: "in the sheet", value: difference(1, lost).value },
    { label: "white water", value: lost.value },
  ]);

/** An additive of several places: what of each is kept, and what is lost of all. */
export const keptAndLost = (title: string, kept: readonly Line[], lost: number): Stack =>
  stack(title, "unit of the amounts", [
    ...kept.map(({ label, value }) => ({ label: `kept, ${label}`, value: Number(value) })),
    { label: "lost", value: lost },
  ]);
