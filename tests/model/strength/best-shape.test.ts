import { describe, expect, it } from "vitest";
import { Random } from "../../../src/model/numerics/random";
import { fitBestShape } from "../../../src/model/strength/best-shape";
import { fitResponse } from "../../../src/model/strength/fit";
import { independentPoints } from "../../../src/model/strength/points";
import { response, type Shape, shapes } from "../../../src/model/strength/response";
import certified from "../../references/nonlinear-regression.json";

const doses = [0, 1, 2, 3, 5, 7, 10, 14, 19, 25];

function measured(shape: Shape, noise: number): number[] {
  const random = new Random(5, 1);
  const [gain, scale] = shape === "straight" ? [1.2, 1] : [12, 5];
  return doses.map((dose) => response(dose, 40, gain, scale, shape) + noise * random.normal());
}

describe("the best shape", () => {
  it.each(shapes)("is %s where the points are so", (shape) => {
    expect(fitBestShape(independentPoints(doses, measured(shape, 0.02))).shape).toBe(shape);
    expect(fitBestShape(independentPoints(doses, measured(shape, 0.02)), 40).shape).toBe(shape);
  });

  it("is the one with the least corrected Akaike among all that the points can tell", () => {
    const points = independentPoints(doses, measured("exponential", 0.8));
    const best = fitBestShape(points);
    for (const shape of shapes) {
      expect(best.correctedAkaike).toBeLessThanOrEqual(
        fitResponse(points, shape).correctedAkaike as number,
      );
    }
  });

  it("is straight on an exact line, which no curve may beat by rounding", () => {
    const line = doses.map((dose) => 40 + 0.7 * dose);
    expect(fitBestShape(independentPoints(doses, line)).shape).toBe("straight");
  });

  it("is straight where the strength does not answer to the dose", () => {
    expect(
      fitBestShape(
        independentPoints(
          doses,
          doses.map(() => 40),
        ),
      ).plateauGain,
    ).toBe(0);
  });

  it("is hyperbolic for Puromycin, as published", () => {
    const set = certified.cases.find(
      ({ name }) => name === "Puromycin",
    ) as (typeof certified.cases)[number];
    expect(fitBestShape(independentPoints(set.doses, set.strengths), 0).shape).toBe("hyperbolic");
  });

  it("needs six points, and with blocks three more than the parameters", () => {
    const five = independentPoints(doses.slice(0, 5), measured("exponential", 0.02).slice(0, 5));
    expect(() => fitBestShape(five)).toThrow(
      'The number of points is 5. Give at least 6 to let shape be "best"',
    );
    const blocks = [1, 2, 3, 1, 2, 3, 1];
    const seven = independentPoints(
      doses.slice(0, 7),
      measured("straight", 0.1).slice(0, 7),
      undefined,
      blocks,
    );
    expect(() => fitBestShape(seven)).toThrow("Give at least 8");
  });

  it("says what is wrong where no shape can be fitted", () => {
    const one = independentPoints([5, 5, 5, 5, 5, 5], [40, 41, 42, 43, 44, 45]);
    expect(() => fitBestShape(one)).toThrow("The number of different doses is 1.");
  });
});
