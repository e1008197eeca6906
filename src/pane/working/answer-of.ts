import type { Call } from "../../cells/observer";
import type { Place } from "./find-calls";

/** What a cell shows of an answer. */
export interface ShownAnswer {
  /** Which of the numbers of a table it is: "Apr, cost". "" where there is one number only. */
  readonly name: string;
  readonly value: number | string;
  readonly unit: string;
}

/** The answer in one cell; undefined for an error, and for a text of a table, which is but a label. */
export function answerOf(
  call: Call,
  { row, column }: Place,
  returns: string,
): ShownAnswer | undefined {
  const answer: unknown = call.answer;
  if (!Array.isArray(answer)) return undefined;
  const rows = answer as readonly (readonly unknown[])[];
  const value = rows[row]?.[column];
  if (isTable(call)) {
    return typeof value === "number" ? { ...nameIn(rows, row, column), value } : undefined;
  }
  if (typeof value !== "number" && typeof value !== "string") return undefined;
  return { name: "", value, unit: call.by === "whole" ? "" : unitOf(returns) };
}

/** Whether an answer is more than one value, found together. */
const isTable = ({ by, answer }: Call) =>
  by === "whole" && Array.isArray(answer) && answer.length * (answer[0]?.length ?? 0) > 1;

/** The words of a table that a number stands under and behind, its column's header and its row's label, and the unit in them. */
function nameIn(rows: readonly (readonly unknown[])[], row: number, column: number) {
  const headers = rows[0]?.every((cell) => typeof cell === "string") ? rows[0] : undefined;
  const header = headers?.[column];
  const label = column > 0 ? rows[row]?.[0] : undefined;
  const words = [typeof label === "number" ? `${headers?.[0] ?? ""} ${label}` : label, header];
  const name = words.filter((word) => typeof word === "string").join(", ");
  const [, bare = name, unit = ""] = /^(.*) \[([^\]]+)\]$/.exec(name) ?? [];
  return { name: bare.trim(), unit: unit === "fraction" ? "" : unit };
}

/** The unit in the words of what comes back, where there is one for all. */
function unitOf(returns: string): string {
  const unit = /\[([^\]]+)\]/.exec(returns)?.[1] ?? "";
  return unit.includes(",") ? "" : unit;
}
