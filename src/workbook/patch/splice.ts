/** A piece of a text that is replaced; an empty piece is an insertion. */
export interface Replacement {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with its pieces replaced. Where two insertions share a place, the first given comes first. */
export function splice(text: string, replacements: readonly Replacement[]): string {
  const ordered = [...replacements].sort((a, b) => a.start - b.start || a.end - b.end);
  const pieces: string[] = [];
  let at = 0;
  for (const { start, end, text: piece } of ordered) {
    if (start < at) throw new Error("Two replacements overlap.");
    pieces.push(text.slice(at, start), piece);
    at = end;
  }
  pieces.push(text.slice(at));
  return pieces.join("");
}
