import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chargeDensity } from "../../../src/model/charge/density";
import { chargeLimit } from "../../../src/model/charge/limit";
import {
  ANHYDROGLUCOSE,
  nitrogenFromSubstitution,
  QUATERNARY_CHLORIDE,
  substitutionFromNitrogen,
} from "../../../src/model/charge/substitution";
import { molarMass, readFormula } from "../../../src/model/effluent/chemical-formula";
import reference from "../../references/stoichiometry.json";
import { expectRefusal, expectRelative } from "../expectations";

const bySubstitution = Object.entries(reference.by_degree_of_substitution).map(
  ([ds, values]) => [Number(ds), values] as const,
);

describe("substitution and charge of cationic starch", () => {
  it("rests on the masses of its formulas", () => {
    expectRelative(molarMass(readFormula("C6H10O5")), ANHYDROGLUCOSE, 1e-12);
    expectRelative(molarMass(readFormula("C6H14NOCl")), QUATERNARY_CHLORIDE, 1e-12);
  });

  it.each(bySubstitution)("agrees with stoichiometry at substitution %d", (ds, values) => {
    expectRelative(nitrogenFromSubstitution(ds), values.pctN / 100, 1e-12);
    expectRelative(chargeDensity(ds), values.charge_meq_g, 1e-12);
    expectRelative(substitutionFromNitrogen(values.pctN / 100), ds, 1e-12);
  });

  it("turns nitrogen into substitution and back", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.05, noNaN: true }), (nitrogen) => {
        expectRelative(
          nitrogenFromSubstitution(substitutionFromNitrogen(nitrogen)),
          nitrogen,
          1e-12,
        );
      }),
    );
  });
});

describe("the charge limit", () => {
  it.each([
    // Reference values of the ceiling at 5 µeq/g of surface charge, computed from the charge density.
    [0.02, 41.3],
    [0.035, 23.9],
    [0.05, 17.0],
  ])("of starch at substitution %d on 5 µeq/g is %d kg/t", (ds, limit) => {
    expectRelative(chargeLimit(5, 0, 0.03, chargeDensity(ds), 0), limit, 0.002);
  });

  it("adds the demand of the water that comes with the solids", () => {
    // At 1 % consistency each kg brings 99 L: 10 + 100·99/1000 = 19.9 µeq/g, less 4.9, over 0.2 meq/g.
    expectRelative(chargeLimit(10, 100, 0.01, 0.2, 4.9), 75, 1e-12);
  });

  it("is 0 where another additive meets the demand, and none where it exceeds it", () => {
    expect(chargeLimit(5, 0, 0.03, 0.2, 5)).toBe(0);
    expectRefusal("no answer", "other cationic charge is 6 µeq/g, above the demand of 5", () =>
      chargeLimit(5, 0, 0.03, 0.2, 6),
    );
  });
});
