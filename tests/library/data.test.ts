import { describe, expect, it } from "vitest";
import { ADDITIVES } from "../../src/library/additives";
import { COMPONENTS } from "../../src/library/components";
import type { Entry } from "../../src/library/entry";
import { chargeDensity } from "../../src/model/charge/density";
import { nitrogenFromSubstitution } from "../../src/model/charge/substitution";
import { theoreticalOxygenDemand } from "../../src/model/effluent/oxygen-demand";
import { expectRelative } from "../model/expectations";
import reference from "../references/stoichiometry.json";

const everyItem = [...ADDITIVES, ...COMPONENTS];
const everyEntry = everyItem.flatMap(({ name, properties }) =>
  [...properties].map(([property, entry]) => ({ name, property, entry })),
);
const value = (name: string, property: string) => {
  const entry = everyItem.find((item) => item.name === name)?.properties.get(property);
  return (entry as Entry).value as number;
};

describe("the library's data", () => {
  it("holds the kinds that a mill asks for, each name once", () => {
    expect(new Set(ADDITIVES.map(({ kind }) => kind))).toEqual(
      new Set([
        "native starch",
        "cationic starch",
        "anionic starch",
        "amphoteric starch",
        "gum",
        "carboxymethyl cellulose",
        "polyacrylamide",
      ]),
    );
    expect(new Set(everyItem.map(({ name }) => name.toLowerCase())).size).toBe(everyItem.length);
  });

  it.each(everyEntry)("says of $name, $property, its unit, evidence and source", ({ entry }) => {
    expect(entry.unit).not.toBe("");
    expect(entry.source.length).toBeGreaterThan(10);
    expect(["published", "computed", "typical, from memory"]).toContain(entry.evidence);
    if (entry.evidence === "typical, from memory") expect(entry.source).toContain("from memory");
    if (typeof entry.value !== "number") return;
    expect(entry.low).toBeLessThanOrEqual(entry.value);
    expect(entry.high).toBeGreaterThanOrEqual(entry.value);
  });

  it.each([
    "specific surface",
    "site capacity",
    "half load",
    "charge",
    "first-pass retention",
    "ash factor",
  ])("gives every component its %s", (property) => {
    for (const { properties } of COMPONENTS)
      expect(typeof properties.get(property)?.value).toBe("number");
  });

  it.each([
    "charge density",
    "nitrogen",
    "typical dose",
    "retention",
    "COD factor",
    "BOD factor",
    "theoretical oxygen demand",
    "solids",
  ])("gives every additive its %s", (property) => {
    for (const { properties } of ADDITIVES)
      expect(typeof properties.get(property)?.value).toBe("number");
  });

  it.each(Object.entries(reference.by_degree_of_substitution).filter(([ds]) => ds !== "0"))(
    "computes cationic starch of substitution %s as stoichiometry and the model do",
    (ds, expected) => {
      const name = `Cationic starch, DS ${ds}`;
      expectRelative(value(name, "nitrogen"), expected.pctN / 100, 1e-9);
      expectRelative(value(name, "nitrogen"), nitrogenFromSubstitution(Number(ds)), 1e-9);
      expectRelative(value(name, "charge density"), expected.charge_meq_g, 1e-9);
      expectRelative(value(name, "charge density"), chargeDensity(Number(ds)), 1e-9);
      expectRelative(value(name, "theoretical oxygen demand"), expected.ThOD_g_g, 1e-9);
      expectRelative(value(name, "oxygen demand with nitrification"), expected.ThOD_nitrif, 1e-9);
    },
  );

  it("computes the others as stoichiometry does", () => {
    const { theoretical_oxygen_demand: demand, ash_factors: ash } = reference;
    expectRelative(value("Native maize starch", "theoretical oxygen demand"), demand.starch, 1e-12);
    expectRelative(
      value("Guar gum", "theoretical oxygen demand"),
      demand.guar_galactomannan,
      1e-12,
    );
    expectRelative(
      value("Carboxymethyl cellulose", "theoretical oxygen demand"),
      demand.CMC_DS0_7,
      1e-12,
    );
    expectRelative(value("Kaolin", "ash factor"), ash.kaolinite_900, 1e-12);
    expectRelative(value("Talc", "ash factor"), ash.talc_900, 1e-12);
    expectRelative(value("Ground calcium carbonate", "ash factor"), ash.CaCO3_to_CaO, 1e-12);
  });

  it.each(ADDITIVES.map(({ name, properties }) => ({ name, properties })))(
    "keeps $name consistent: BOD below COD below theory, sign of the charge as its word",
    ({ properties }) => {
      const number = (property: string) => properties.get(property)?.value as number;
      expect(number("BOD factor")).toBeLessThan(number("COD factor"));
      expect(number("COD factor")).toBeLessThanOrEqual(number("theoretical oxygen demand"));
      const formula = properties.get("formula")?.value as string;
      expect(number("theoretical oxygen demand")).toBe(theoreticalOxygenDemand(formula, false));
      const word = properties.get("charge")?.value as string;
      const sign = word.includes("cationic") ? 1 : word.includes("anionic") ? -1 : 0;
      expect(Math.sign(number("charge density"))).toBe(sign);
    },
  );

  it("writes formulas in the figures of their shares, not in those of their rounding", () => {
    const formula = (name: string) =>
      ADDITIVES.find((item) => item.name === name)?.properties.get("formula")?.value;
    expect(formula("Amphoteric polyacrylamide")).toBe("(C3H5NO)0.91(C8H16NO2Cl)0.06(C3H3O2Na)0.03");
    for (const { name } of ADDITIVES) expect(formula(name), name).not.toMatch(/\.\d{6}/);
  });

  it("gives fines 3 or more times the surface of fibre, as published", () => {
    for (const { properties, kind } of COMPONENTS) {
      if (kind !== "fines") continue;
      const surface = properties.get("specific surface")?.value as number;
      expect(
        surface / value("Bleached kraft fibre, refined", "specific surface"),
      ).toBeGreaterThanOrEqual(3);
    }
  });
});
