/**
 * The width of a column. Characters are those of the usual type, seven pixels wide, with five pixels beside
 * them all (ECMA-376 Part 1 §18.3.1.13).
 */
export const DIGIT = 7;
const BESIDE = 5;

export const pixelsOfCharacters = (characters: number) => DIGIT * characters + BESIDE;

export const charactersOfPixels = (pixels: number) =>
  Math.round(((pixels - BESIDE) / DIGIT) * 100) / 100;

/** As a file counts it. */
export const fileOfCharacters = (characters: number) =>
  Math.round((pixelsOfCharacters(characters) / DIGIT) * 10_000) / 10_000;

/** A file's widths are counted in digits, what stands beside the characters included. */
export const charactersOfFile = (width: number) => Math.max(0, charactersOfPixels(DIGIT * width));
