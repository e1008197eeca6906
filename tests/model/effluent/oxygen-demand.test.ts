import { describe, expect, it } from "vitest";
import { theoreticalOxygenDemand } from "../../../src/model/effluent/oxygen-demand";
import reference from "../../references/stoichiometry.json";
import { expectRefusal, expectRelative } from "../expectations";

const demand = reference.theoretical_oxygen_demand;

/** Starch with DS quaternary groups (chloride form) and with DS sodium carboxymethyl groups. */
const cationicStarch = (ds: number | string) => `C6H10O5(C6H14NOCl)${ds}`;

describe("theoretical oxygen demand", () => {
  it.each([
    ["C6H10O5", false, demand.starch],
    ["C6H10O5", true, demand.starch],
    ["C6H12O6", false, demand.glucose],
    ["C12H22O11", false, demand.maltose],
    ["C6H7O2(OH)2.3(OCH2COONa)0.7", false, demand.CMC_DS0_7],
    ["C7.4H10.7O6.4Na0.7", false, demand.CMC_DS0_7],
    ["(CH2CHCONH2)", false, demand.PAM_noNitr],
    ["C3H5NO", true, demand.PAM_nitr],
    ["C2H2O2", false, demand.glyoxal],
  ])("of %s (nitrified: %s) is %d g/g", (formula, nitrify, expected) => {
    expectRelative(theoreticalOxygenDemand(formula, nitrify), expected, 1e-12);
  });

  it.each(Object.entries(reference.by_degree_of_substitution).filter(([ds]) => ds !== "0"))(
    "of cationic starch at substitution %s agrees with and without nitrification",
    (ds, values) => {
      expectRelative(theoreticalOxygenDemand(cationicStarch(ds), false), values.ThOD_g_g, 1e-12);
      expectRelative(theoreticalOxygenDemand(cationicStarch(ds), true), values.ThOD_nitrif, 1e-12);
    },
  );

  it("takes 4.57 g of oxygen to nitrify a gram of ammonia nitrogen", () => {
    const perNitrogen = (theoreticalOxygenDemand("NH3", true) * 17.031) / 14.007;
    expectRelative(perNitrogen, demand.ammoniaN_nitrification_per_gN, 1e-12);
    expect(theoreticalOxygenDemand("NH3", false)).toBe(0);
  });

  it.each([
    // Oxygen atoms taken up, written out: Na2SO3 + ½O2, H2S + 2O2, PH3 + 2O2, CH3Cl + 3/2 O2, 2FeSO4 + ½O2.
    ["Na2SO3", 15.999 / 126.037],
    ["H2S", 63.996 / 34.076],
    ["PH3", 63.996 / 33.998],
    ["CH3Cl", 47.997 / 50.485],
    ["FeSO4*7H2O", 7.9995 / 278.006],
  ])("of %s is that of its written reaction", (formula, expected) => {
    expectRelative(theoreticalOxygenDemand(formula, false), expected, 1e-9);
  });

  it.each([
    "NaCl",
    "CaCO3",
    "Al2(SO4)3*18H2O",
    "H2O",
    "Al2Si2O5(OH)4",
    "TiO2",
    "Na2SiO3",
    "KH2PO4",
  ])("of %s, already oxidised, is 0", (formula) => {
    expect(theoreticalOxygenDemand(formula, true)).toBe(0);
  });

  it("of a nitrate is 0 where nitrogen ends as nitrate, and refused where it would end as ammonia", () => {
    expect(theoreticalOxygenDemand("NaNO3", true)).toBe(0);
    expectRefusal("no answer", "It is an oxidiser", () => theoreticalOxygenDemand("NaNO3", false));
    expectRefusal("no answer", "It is an oxidiser", () => theoreticalOxygenDemand("H2O2", false));
  });

  it("does not change when the whole formula is multiplied", () => {
    expectRelative(
      theoreticalOxygenDemand("(C6H10O5)250*3H2O", false),
      theoreticalOxygenDemand("C1500H2500O1250*3H2O", false),
      1e-12,
    );
  });
});
