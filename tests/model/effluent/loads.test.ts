import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { largestDoseWithin } from "../../../src/model/effluent/allowance";
import { effluentConcentration } from "../../../src/model/effluent/concentration";
import { populationEquivalents } from "../../../src/model/effluent/equivalents";
import { effluentLoad } from "../../../src/model/effluent/load";
import { additiveLoss } from "../../../src/model/effluent/loss";
import { expectRefusal, expectRelative } from "../expectations";

describe("what leaves", () => {
  it("is what is not retained, times what a gram of it carries", () => {
    expectRelative(additiveLoss(8, 0.8, 340), 544, 1e-12);
    expectRelative(effluentLoad(8, 0.8, 340, 1.1), 598.4, 1e-12);
    expect(additiveLoss(8, 1, 340)).toBe(0);
  });

  it("is diluted in the flow", () => {
    expectRelative(effluentConcentration(598.4, 3400), 176, 1e-12);
  });

  it("counts 60 g a day for a person (Directive 91/271/EEC, article 2)", () => {
    expectRelative(populationEquivalents(600, 0.06), 10_000, 1e-12);
  });
});

describe("the largest dose within a limit", () => {
  it("fills what the background leaves", () => {
    // (3000 − 2660)/((1 − 0.8)·340·1.25) = 340/85 kg/t.
    expectRelative(largestDoseWithin(3000, 2660, 0.8, 340, 1.25, 0, 0), 4, 1e-12);
  });

  it("is the inverse of the load behind the plant", () => {
    const share = fc.double({ min: 0, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        share,
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (retention, removal, margin, factor) => {
          const limit = 2000;
          const background = limit * (1 - margin) * 0.5;
          const dose = largestDoseWithin(
            limit,
            background,
            retention,
            340,
            factor,
            removal,
            margin,
          );
          const discharged =
            (background + effluentLoad(dose, retention, 340, factor)) * (1 - removal);
          expectRelative(discharged, limit * (1 - margin), 1e-9);
        },
      ),
    );
  });

  it("is 0 where the background just fills the limit, and none where it is over", () => {
    expect(largestDoseWithin(3000, 3000, 0.8, 340, 1.1, 0, 0)).toBe(0);
    expectRefusal("no answer", "background is 3001 kg/d, above the 3000 kg/d", () =>
      largestDoseWithin(3000, 3001, 0.8, 340, 1.1, 0, 0),
    );
    expectRefusal("no answer", "background is 1000 kg/d, above the 900 kg/d", () =>
      largestDoseWithin(500, 1000, 0.8, 340, 1.1, 0.5, 0.1),
    );
  });

  it.each([
    ["The overall retention is 1", 1, 340, 1.1],
    ["The production is 0 or blank", 0.8, 0, 1.1],
    ["The factor is 0 or blank", 0.8, 340, 0],
  ])("has no answer where nothing leaves, and says why: %s", (why, retention, production, factor) =>
    expectRefusal(
      "no answer",
      `${why}, so nothing of the additive leaves and no dose reaches the limit.`,
      () => largestDoseWithin(3000, 0, retention, production, factor, 0, 0),
    ),
  );
});
