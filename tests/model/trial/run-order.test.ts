import { describe, expect, it } from "vitest";
import { runOrder } from "../../../src/model/trial/run-order";
import { expectRefusal } from "../expectations";

describe("the run order", () => {
  const doses = [0, 2, 4, 8];

  it("holds every dose once in each block, the runs numbered through", () => {
    const runs = runOrder(doses, 5, 7);
    expect(runs.map(([, run]) => run)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
    for (let block = 1; block <= 5; block++) {
      const own = runs.filter(([of]) => of === block).map(([, , dose]) => dose);
      expect(own.sort((a, b) => a - b)).toEqual(doses);
    }
  });

  it("is the same for the same seed, and another for another", () => {
    expect(runOrder(doses, 5, 7)).toEqual(runOrder(doses, 5, 7));
    expect(runOrder(doses, 5, 8)).not.toEqual(runOrder(doses, 5, 7));
  });

  it("puts each dose first equally often", () => {
    const blocks = 2000;
    const first = runOrder(doses, blocks, 1).filter((_, i) => i % 4 === 0);
    for (const dose of doses) {
      const count = first.filter((run) => run[2] === dose).length;
      expect(Math.abs(count - blocks / 4)).toBeLessThan(4 * Math.sqrt((blocks * 3) / 16));
    }
  });

  it("refuses more runs than a sheet should hold", () => {
    expectRefusal("impossible input", "4 doses in 30000 blocks make 120000 runs", () =>
      runOrder(doses, 30_000, 1),
    );
  });
});
