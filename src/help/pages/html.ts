/** Markup that is safe to stand in a page. */
export class Html {
  constructor(readonly markup: string) {}
}

type Piece = Html | string | number | undefined | readonly Piece[];

/** Puts values into markup: texts are escaped, markup and lists of it stay, undefined leaves nothing. */
export function html(texts: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return new Html(texts.map((text, i) => text + markupOf(pieces[i])).join(""));
}

function markupOf(piece: Piece): string {
  if (piece === undefined) return "";
  if (piece instanceof Html) return piece.markup;
  if (typeof piece === "object") return piece.map(markupOf).join("");
  return String(piece)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
