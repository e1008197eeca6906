import { expect, test } from "vitest";
import { fitResponse } from "../../../src/model/strength/fit";
import { fittedAt } from "../../../src/model/strength/fitted";
import { gainScaleCorrelation } from "../../../src/model/strength/limits";
import { independentPoints } from "../../../src/model/strength/points";
import type { Shape } from "../../../src/model/strength/response";
import computed from "../../references/response-curves.json";
import { expectRelative } from "../expectations";

test.each(computed.cases)(
  "what the points lie off the fitted curve of their block is what the fit leaves: $name",
  (set) => {
    const { doses, strengths, blocks, knownBase } = set;
    const points = independentPoints(doses, strengths, undefined, blocks ?? undefined);
    const fit = fitResponse(points, set.shape as Shape, knownBase ?? undefined);
    const fitted = fittedAt(points, fit);
    const left = fitted.reduce(
      (sum, value, i) => sum + ((points.strengths[i] as number) - value) ** 2,
      0,
    );
    expectRelative(left, fit.residualSumOfSquares, 1e-9);
  },
);

test.each(computed.cases.filter(({ shape }) => shape !== "straight"))(
  "gain and scale go together as their covariance in 40-digit arithmetic has it: $name",
  (set) => {
    const { doses, strengths, blocks, knownBase } = set;
    const points = independentPoints(doses, strengths, undefined, blocks ?? undefined);
    const fit = fitResponse(points, set.shape as Shape, knownBase ?? undefined);
    const [, gain, scale] = set.optimum.covariance as [number[], number[], number[]];
    const expected = (gain[2] as number) / Math.sqrt((gain[1] as number) * (scale[2] as number));
    expectRelative(gainScaleCorrelation(fit) as number, expected, 1e-6);
  },
);

test("a straight response has no scale to go with its gain", () => {
  const points = independentPoints([0, 2, 4, 8], [40, 42.1, 43.8, 48.2]);
  expect(gainScaleCorrelation(fitResponse(points, "straight"))).toBeUndefined();
});
