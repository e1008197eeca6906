/** A text as it is searched: small letters, no accents, "fiber" as "fibre", signs as spaces. */
export function searchKey(text: string): string {
  return text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll("fiber", "fibre")
    .replace(/[^\p{L}\p{N}%/³²]+/gu, " ")
    .trim();
}

/**
 * How well texts answer a search: 0 where a word of it is in none of them, else more the earlier the text
 * that holds a word stands in the list, and more where it holds it as the start of a word, or as a whole one.
 */
export function rank(query: string, texts: readonly string[]): number {
  const words = searchKey(query)
    .split(" ")
    .filter((word) => word !== "");
  if (words.length === 0) return 1;
  const keys = texts.map((text) => ` ${searchKey(text)} `);
  let total = 0;
  for (const word of words) {
    const place = keys.findIndex((key) => key.includes(word));
    if (place < 0) return 0;
    const key = keys[place] as string;
    const fit = key.includes(` ${word} `) ? 3 : key.includes(` ${word}`) ? 2 : 1;
    total += (keys.length - place) * fit;
  }
  return total;
}

/** The items that answer a search, the best first; all of them as they stand where nothing is asked. */
export function search<T>(
  query: string,
  items: readonly T[],
  textsOf: (item: T) => readonly string[],
): readonly T[] {
  return items
    .map((item) => ({ item, rank: rank(query, textsOf(item)) }))
    .filter((one) => one.rank > 0)
    .sort((one, other) => other.rank - one.rank)
    .map(({ item }) => item);
}
