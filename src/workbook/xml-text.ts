/** Characters that XML cannot hold are written the way spreadsheet files write them: _x0007_. */
const forbidden = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu;
const looksEscaped = /_(?=x[0-9A-Fa-f]{4}_)/g;

const hex = (character: string) =>
  `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;

const escapeMarkup = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** A text of a cell, in which _x0007_ stands for a character. */
export const escapeText = (text: string): string =>
  escapeMarkup(text.replace(looksEscaped, "_x005F_").replace(forbidden, hex)).replaceAll(
    "\r",
    "_x000D_",
  );

/** A formula: characters that XML cannot hold do not occur in one and are dropped. */
export const escapeFormula = (text: string): string => escapeMarkup(text.replace(forbidden, ""));

export const escapeAttribute = (text: string): string =>
  escapeFormula(text).replaceAll('"', "&quot;").replaceAll("\n", "&#10;").replaceAll("\t", "&#9;");

/** The attributes of an element, those that are undefined left out. */
export const attributesXml = (attributes: Readonly<Record<string, string | undefined>>): string =>
  Object.entries(attributes)
    .map(([name, value]) => (value === undefined ? "" : ` ${name}="${escapeAttribute(value)}"`))
    .join("");

/** The text that a file's _x0007_ stands for. */
export const unescapeText = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16)));
