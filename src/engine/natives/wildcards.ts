/** * stands for any characters, ? for one; behind ~ they are themselves. */
const source = (text: string): string =>
  text.replace(/~[*?~]|[*?]|[\\^$.|+()[\]{}]/g, (sign) => {
    if (sign === "*") return "[^]*";
    if (sign === "?") return "[^]";
    return `\\${sign.at(-1)}`;
  });

/** A text without wildcards as it is meant: what stands behind ~ is itself. */
export const unescaped = (text: string): string => text.replaceAll(/~([*?~])/g, "$1");

const hasWildcard = (text: string) => /(?:^|[^~])(?:~~)*[*?]/.test(text);

/** Matches a whole text whatever its case; undefined where the pattern has no wildcard. */
export const wildcards = (pattern: string): RegExp | undefined =>
  hasWildcard(pattern) ? new RegExp(`^${source(pattern)}$`, "iu") : undefined;

/** Finds a pattern inside a text whatever its case. */
export const wildcardsWithin = (pattern: string): RegExp => new RegExp(source(pattern), "giu");
