import { describe, expect, it } from "vitest";
import { bandOf } from "../../../src/model/strength/band";
import { type Fit, fitResponse } from "../../../src/model/strength/fit";
import { estimates } from "../../../src/model/strength/limits";
import { independentPoints } from "../../../src/model/strength/points";
import { response } from "../../../src/model/strength/response";
import { type SampledCurve, sampleCurves } from "../../../src/model/strength/sample";
import computed from "../../references/response-curves.json";
import { expectRelative } from "../expectations";

const puromycin = computed.cases.find(
  ({ name }) => name === "Puromycin with a free base",
) as (typeof computed.cases)[number];
const fit = fitResponse(independentPoints(puromycin.doses, puromycin.strengths), "hyperbolic");
const names = ["base", "plateauGain", "scale"] as const;

function moments(curves: SampledCurve[]) {
  const mean = names.map(
    (name) => curves.reduce((sum, curve) => sum + curve[name], 0) / curves.length,
  );
  const covariance = names.map((a, i) =>
    names.map(
      (b, j) =>
        curves.reduce(
          (sum, curve) => sum + (curve[a] - (mean[i] as number)) * (curve[b] - (mean[j] as number)),
          0,
        ) /
        (curves.length - 1),
    ),
  );
  return { mean, covariance };
}

describe("curves drawn from a fit", () => {
  it("have its estimates as mean and its covariance, in size and in correlation", () => {
    const { mean, covariance } = moments(sampleCurves(fit, 40_000, 1));
    const expected = puromycin.optimum;
    const deviation = expected.standardErrors;
    names.forEach((name, i) => {
      const [error, centre] = [deviation[i] as number, expected[name]];
      // Stratified draws: the mean is far closer than error/√n.
      expect(Math.abs((mean[i] as number) - centre)).toBeLessThan(1e-3 * error);
      names.forEach((_, j) => {
        const size = error * (deviation[j] as number);
        const difference = (covariance[i] as number[])[j] as number;
        const wanted = (expected.covariance[i] as number[])[j] as number;
        // Five standard errors of a covariance of 40 000 draws.
        expect(Math.abs(difference - wanted) / size).toBeLessThan(0.035);
      });
    });
  });

  it("spread as the band does when fed to the response, where the curve is well known", () => {
    const misra = computed.cases[0] as (typeof computed.cases)[number];
    const known = fitResponse(independentPoints(misra.doses, misra.strengths), "exponential");
    const curves = sampleCurves(known, 20_000, 3);
    for (const dose of [100, 400, 700]) {
      const values = curves.map((c) =>
        response(dose, c.base, c.plateauGain, c.scale, "exponential"),
      );
      const mean = values.reduce((a, b) => a + b) / values.length;
      const deviation = Math.sqrt(
        values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length,
      );
      expectRelative(deviation, bandOf(known, 0.95)(dose).standardError, 0.03);
    }
  });

  it("always have a scale above 0, even where its standard error is larger than itself", () => {
    const bod = computed.cases.find(
      ({ name }) => name === "BOD with a free base",
    ) as (typeof computed.cases)[number];
    const loose = fitResponse(independentPoints(bod.doses, bod.strengths), "exponential");
    expect(estimates(loose, 0.95).scale.lower).toBeLessThan(0);
    const curves = sampleCurves(loose, 5000, 9);
    expect(Math.min(...curves.map(({ scale }) => scale))).toBeGreaterThan(0);
    expectRelative(moments(curves).mean[2] as number, loose.scale, 0.01);
  });

  it("are the same for the same seed, and others for another", () => {
    expect(sampleCurves(fit, 5, 42)).toEqual(sampleCurves(fit, 5, 42));
    expect(sampleCurves(fit, 5, 42)).not.toEqual(sampleCurves(fit, 5, 43));
    expect(sampleCurves(fit, 3, 42)).toHaveLength(3);
  });

  it("hold what the fit holds: a known base, the scale of a line", () => {
    const held = sampleCurves(
      fitResponse(independentPoints(puromycin.doses, puromycin.strengths), "hyperbolic", 0),
      50,
      7,
    );
    expect(new Set(held.map(({ base }) => base))).toEqual(new Set([0]));
    const line = sampleCurves(
      fitResponse(independentPoints([0, 1, 2, 3], [1, 3, 4, 7]), "straight"),
      50,
      7,
    );
    expect(new Set(line.map(({ scale }) => scale))).toEqual(new Set([1]));
  });

  it("do not vary where the fit leaves no error", () => {
    const exact: Fit = {
      ...fit,
      covarianceRoot: [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
    };
    const [curve] = sampleCurves(exact, 1, 1) as [SampledCurve];
    expect(curve).toEqual({ base: fit.base, plateauGain: fit.plateauGain, scale: fit.scale });
  });
});
