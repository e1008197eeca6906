/** More items than that no sentence has room for. */
const MOST_NAMED = 4;

/** The first items, and how many more there are. */
export function listed<T>(items: readonly T[], words: (item: T, place: number) => string): string {
  const named = items.slice(0, MOST_NAMED).map(words).join(", ");
  const more = items.length - MOST_NAMED;
  return more > 0 ? `${named}, and ${more} more` : named;
}
