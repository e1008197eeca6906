import temml from "temml";

/**
 * TeX as MathML that any font can show: a browser turns a single letter into a sign of mathematics, and
 * the multiplication dot is one, which few fonts hold. So letters are slanted by style (class "letter"), and
 * the dot is the common one.
 */
export function typeset(tex: string): string {
  return temml
    .renderToString(`\\displaystyle ${tex}`)
    .replaceAll("⋅", "·")
    .replace(/<mi>(\p{L})<\/mi>/gu, '<mi class="letter">$1</mi>');
}
