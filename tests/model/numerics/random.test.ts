import { describe, expect, it } from "vitest";
import { philox, Random } from "../../../src/model/numerics/random";

describe("the generator", () => {
  // Known answers of Philox4x32-10, file kat_vectors of Random123 (Salmon et al. 2011).
  it.each([
    [
      [0, 0, 0, 0],
      [0, 0],
      [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
    ],
    [
      [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
      [0xffffffff, 0xffffffff],
      [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
    ],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
    ],
  ] as const)("answers the published test vector %j", (counter, key, answer) => {
    expect(philox([...counter], [...key])).toEqual(answer);
  });

  it("repeats itself for one seed and differs by seed and by stream", () => {
    const first = (seed: number, stream: number) => {
      const random = new Random(seed, stream);
      return Array.from({ length: 9 }, () => random.word()).join();
    };
    expect(first(7, 1)).toBe(first(7, 1));
    const pairs = [
      [7, 1],
      [8, 1],
      [7, 2],
      [7, -1],
      [7, 0],
      [7 + 2 ** 32, 1],
      [-7, 1],
      [1, 7],
    ] as const;
    const seen = pairs.map(([seed, stream]) => first(seed, stream));
    expect(new Set(seen).size).toBe(seen.length);
  });

  it("draws uniform numbers with the moments of the rectangle, inside (0, 1)", () => {
    const random = new Random(2024, 1);
    const count = 200_000;
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < count; i++) {
      const u = random.uniform();
      if (u <= 0 || u >= 1) throw new Error(`${u} is outside (0, 1)`);
      sum += u - 0.5;
      squares += (u - 0.5) ** 2;
    }
    expect(Math.abs(sum / count)).toBeLessThan(4 * Math.sqrt(1 / 12 / count));
    expect(Math.abs(squares / count - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / count));
  });

  it("draws normal deviates with the moments of the normal, uncorrelated between streams", () => {
    const one = new Random(5, 1);
    const two = new Random(5, 2);
    const count = 50_000;
    let mean = 0;
    let variance = 0;
    let covariance = 0;
    for (let i = 0; i < count; i++) {
      const x = one.normal();
      mean += x / count;
      variance += (x * x) / count;
      covariance += (x * two.normal()) / count;
    }
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(count));
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
    expect(Math.abs(covariance)).toBeLessThan(4 / Math.sqrt(count));
  });

  it("puts every order of four items equally often", () => {
    const random = new Random(11, 1);
    const counts = new Map<string, number>();
    const rounds = 24_000;
    for (let i = 0; i < rounds; i++) {
      const items = [1, 2, 3, 4];
      random.shuffle(items);
      counts.set(items.join(), (counts.get(items.join()) ?? 0) + 1);
    }
    let chiSquare = 0;
    for (const count of counts.values()) chiSquare += (count - rounds / 24) ** 2 / (rounds / 24);
    expect(counts.size).toBe(24);
    // The 99.9 % point of chi square with 23 degrees of freedom (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
    expect(chiSquare).toBeLessThan(49.728);
  });
});
