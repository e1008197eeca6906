import temml from "temml";

/**
 * TeX as MathML that any font can show: a browser turns a single letter into a sign of mathematics, and
 * the multiplication dot and the bar of a mean are such, which few fonts hold. So letters are slanted by style
 * (class "letter"), and dot and bar are the common ones.
 */
export function typeset(tex: string): string {
  return equationsIn(tex).map(typesetOne).join(" ");
}

/** Equations that stand beside each other, each for itself, so that a narrow pane sets them one below the other. */
const equationsIn = (tex: string): string[] =>
  tex.split(/\\quad(?![A-Za-z])/).map((one) => one.trim());

function typesetOne(tex: string): string {
  return temml
    .renderToString(`\\displaystyle ${tex}`)
    .replaceAll("⋅", "·")
    .replaceAll("‾", "¯")
    .replace(/<mi>(\p{L})<\/mi>/gu, '<mi class="letter">$1</mi>');
}
