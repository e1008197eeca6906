const LISTED = 3;

/** Two names are one if they differ in case, in spaces, or in "fiber" for "fibre" only. */
export function nameKey(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ").replaceAll("fiber", "fibre");
}

/**
 * The names most like the one that was asked for, best first, by the share of letter pairs in common
 * (Dice, Ecology 26 (1945) 297).
 */
export function nearestNames(wanted: string, names: readonly string[]): readonly string[] {
  const pairs = letterPairs(nameKey(wanted));
  return names
    .map((name) => ({ name, likeness: likeness(pairs, letterPairs(nameKey(name))) }))
    .sort((one, other) => other.likeness - one.likeness)
    .slice(0, LISTED)
    .map(({ name }) => name);
}

function letterPairs(text: string): ReadonlySet<string> {
  const pairs = new Set<string>();
  for (let i = 1; i < text.length; i++) pairs.add(text.slice(i - 1, i + 1));
  return pairs;
}

function likeness(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  let common = 0;
  for (const pair of one) if (other.has(pair)) common++;
  return (2 * common) / Math.max(1, one.size + other.size);
}
