import { normalQuantile } from "./normal";

/**
 * Random numbers that are the same on every machine: integers only, up to the last division.
 *
 * Philox4x32-10 encrypts a counter under a key. Seed and stream are parts of key and counter, so that two
 * streams of one seed share no block, and nothing has to be run in to make them independent.
 *
 * Source: J. Salmon, M. Moraes, R. Dror, D. Shaw, Parallel random numbers: as easy as 1, 2, 3, SC '11
 * (2011); R. Durstenfeld, Algorithm 235, Comm. ACM 7 (1964) 420, for the shuffle.
 */

/**
 * Who draws from which stream of a seed. People number the streams of their samples from 1 on; the rest
 * lie below, so that one seed typed into several functions never ties their draws together.
 */
export const STREAM = { runOrder: 0, fittedCurves: -1 } as const;

type Words = [number, number, number, number];

const TWO_32 = 2 ** 32;
const ROUNDS = 10;

/** The upper 32 bits of the 64-bit product of two words. */
function upperProduct(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const cross = aHigh * bLow + ((aLow * bLow) >>> 16);
  return (
    (aHigh * bHigh + Math.floor(cross / 65536) + ((cross & 0xffff) + aLow * bHigh) / 65536) >>> 0
  );
}

/** One block: four words of counter under a key of two words. */
export function philox(counter: Words, key: [number, number]): Words {
  let [a, b, c, d] = counter;
  let [low, high] = key;
  for (let round = 0; round < ROUNDS; round++) {
    const upperA = upperProduct(0xd2511f53, a);
    const upperC = upperProduct(0xcd9e8d57, c);
    const lowerA = Math.imul(0xd2511f53, a);
    const lowerC = Math.imul(0xcd9e8d57, c);
    a = (upperC ^ b ^ low) >>> 0;
    b = lowerC >>> 0;
    c = (upperA ^ d ^ high) >>> 0;
    d = lowerA >>> 0;
    low = (low + 0x9e3779b9) >>> 0;
    high = (high + 0xbb67ae85) >>> 0;
  }
  return [a, b, c, d];
}

/** A sequence that its seed and stream determine; both are whole numbers. */
export class Random {
  private readonly key: [number, number];
  private readonly upper: [number, number];
  private block: Words = [0, 0, 0, 0];
  private drawn = 0;

  constructor(seed: number, stream: number) {
    this.key = [seed >>> 0, stream >>> 0];
    this.upper = [Math.floor(seed / TWO_32) >>> 0, Math.floor(stream / TWO_32) >>> 0];
  }

  /** A whole number from 0 to 2³² − 1. */
  word(): number {
    const place = this.drawn % 4;
    if (place === 0) this.block = philox([this.drawn / 4, 0, ...this.upper], this.key);
    this.drawn++;
    return this.block[place] as number;
  }

  /** A number strictly between 0 and 1, on a grid of 2⁻⁵² that is symmetric about ½. */
  uniform(): number {
    const upper = this.word() >>> 6;
    return (upper * 2 ** 26 + (this.word() >>> 6) + 0.5) / 2 ** 52;
  }

  /** A standard normal deviate. */
  normal(): number {
    return normalQuantile(this.uniform());
  }

  /** A whole number from 0 to `count` − 1, each as likely: words beyond the last full cycle are drawn again. */
  below(count: number): number {
    const end = TWO_32 - (TWO_32 % count);
    let word = this.word();
    while (word >= end) word = this.word();
    return word % count;
  }

  /** Puts the items into random order, in place. */
  shuffle<T>(items: { [index: number]: T; readonly length: number }): void {
    for (let last = items.length - 1; last > 0; last--) {
      const other = this.below(last + 1);
      const held = items[last] as T;
      items[last] = items[other] as T;
      items[other] = held;
    }
  }
}
