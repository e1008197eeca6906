import { describe, expect, it } from "vitest";
import { batchMeans } from "../../../src/model/batches/batch-means";

describe("sheets averaged to batches", () => {
  it("takes each value for a batch of its own without batches", () => {
    const means = batchMeans(["a", "b"], [1, 2]);
    expect([...means.values]).toEqual([1, 2]);
    expect(means.levels).toEqual(["a", "b"]);
  });

  it("keeps one label apart at two levels and in two blocks", () => {
    const means = batchMeans([0, 0, 4, 4, 4], [1, 3, 5, 7, 8], [1, 1, 1, 1, 2], [1, 1, 1, 1, 1]);
    expect([...means.values]).toEqual([2, 6, 8]);
    expect(means.levels).toEqual([0, 4, 4]);
    expect(means.blocks).toEqual([1, 1, 2]);
  });

  it("does not take a number for the text of it", () => {
    expect(batchMeans([1, 1], [1, 3], undefined, [1, "1"]).values).toHaveLength(2);
  });

  it("averages ten thousand batches of ten sheets in the order in which they first appear", () => {
    const batches = Array.from({ length: 100_000 }, (_, i) => i % 10_000);
    const means = batchMeans(new Int8Array(100_000), batches, undefined, batches);
    expect([...means.values]).toEqual(batches.slice(0, 10_000));
  });
});
