import type { DefinedName } from "../book";
import { wordsOf } from "./tokens";

/** So many words a name may come to when the names in it are written out; an honest one has a few. */
const mostWords = 10_000;

/**
 * Names that stand for themselves, at once or through others, or that double from one to the next until no
 * machine can write them out; in small letters. An engine that puts a name's formula in its place would
 * never end.
 */
export function endlessNames(definedNames: readonly DefinedName[]): ReadonlySet<string> {
  const wordsIn = new Map<string, string[]>();
  for (const { name, formula } of definedNames) {
    const key = name.toLowerCase();
    const words = wordsIn.get(key);
    if (words) words.push(...wordsOf(formula));
    else wordsIn.set(key, wordsOf(formula));
  }
  const readers = new Map<string, string[]>();
  const waitsFor = new Map<string, number>();
  for (const [name, words] of wordsIn) {
    const others = words.filter((word) => wordsIn.has(word));
    waitsFor.set(name, others.length);
    for (const word of others) {
      const known = readers.get(word);
      if (known) known.push(name);
      else readers.set(word, [name]);
    }
  }
  // Those first that wait for no other; a name that is never reached stands in a circle or behind one.
  const lengths = new Map<string, number>();
  const ready = [...waitsFor].filter(([, count]) => count === 0).map(([name]) => name);
  for (let name = ready.pop(); name !== undefined; name = ready.pop()) {
    const words = wordsIn.get(name) ?? [];
    lengths.set(
      name,
      words.reduce((sum, word) => sum + (lengths.get(word) ?? 1), 1),
    );
    for (const reader of readers.get(name) ?? []) {
      const count = (waitsFor.get(reader) ?? 0) - 1;
      waitsFor.set(reader, count);
      if (count === 0) ready.push(reader);
    }
  }
  const tooLong = (name: string) => (lengths.get(name) ?? Number.POSITIVE_INFINITY) > mostWords;
  return new Set([...wordsIn.keys()].filter(tooLong));
}
