const LISTED = 3;

/** No name is longer; of a longer text its beginning tells which name was meant. */
const LONGEST_NAME = 80;

/** Two names are one if they differ in case, in spaces, or in "fiber" for "fibre" only. */
export function nameKey(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ").replaceAll("fiber", "fibre");
}

/** The one of that name, or else the one that is also called so. */
export function called<
  T extends { readonly name: string; readonly alsoCalled?: readonly string[] },
>(name: string, items: readonly T[]): T | undefined {
  const key = nameKey(name);
  return (
    items.find((item) => nameKey(item.name) === key) ??
    items.find(({ alsoCalled = [] }) => alsoCalled.some((other) => nameKey(other) === key))
  );
}

/** The names most like the one that was asked for, best first. */
export function nearestNames(wanted: string, names: readonly string[]): readonly string[] {
  const keyOf = (name: string) => nameKey(name.slice(0, LONGEST_NAME));
  const key = keyOf(wanted);
  return names
    .map((name) => ({ name, slips: slipsWithin(key, keyOf(name)) }))
    .sort((one, other) => one.slips - other.slips)
    .slice(0, LISTED)
    .map(({ name }) => name);
}

/**
 * The fewest slips of the pen (a letter wrong, missing, too many, or two swapped) that turn the text into a
 * part of the name. Method: edit distance to any part of a text (Sellers, Journal of Algorithms 1 (1980)
 * 359), with swaps (Damerau, Communications of the ACM 7 (1964) 171).
 */
function slipsWithin(text: string, name: string): number {
  let beforeLast: number[] = [];
  let last = new Array<number>(name.length + 1).fill(0);
  for (let i = 1; i <= text.length; i++) {
    const row = [i];
    for (let j = 1; j <= name.length; j++) {
      const wrong = text[i - 1] === name[j - 1] ? 0 : 1;
      const at = (line: readonly number[], column: number) => line[column] ?? Infinity;
      const swapped = i > 1 && j > 1 && text[i - 1] === name[j - 2] && text[i - 2] === name[j - 1];
      row.push(
        Math.min(
          at(last, j - 1) + wrong,
          at(last, j) + 1,
          at(row, j - 1) + 1,
          swapped ? at(beforeLast, j - 2) + 1 : Infinity,
        ),
      );
    }
    beforeLast = last;
    last = row;
  }
  return Math.min(...last);
}
