import { describe, expect, it } from "vitest";
import { molarMass, readFormula } from "../../../src/model/effluent/chemical-formula";
import { ELEMENTS } from "../../../src/model/effluent/elements";
import { expectRefusal, expectRelative } from "../expectations";

const composition = (formula: string) => Object.fromEntries(readFormula(formula));

describe("reading a formula", () => {
  it.each([
    ["C6H10O5", { C: 6, H: 10, O: 5 }],
    ["C₆H₁₀O₅", { C: 6, H: 10, O: 5 }],
    ["CH3COOH", { C: 2, H: 4, O: 2 }],
    ["NaCl", { Na: 1, Cl: 1 }],
    ["Al2(SO4)3", { Al: 2, S: 3, O: 12 }],
    ["C6H7O2(OH)2.3(OCH2COONa)0.7", { C: 7.4, H: 10.7, O: 6.4, Na: 0.7 }],
    ["C6.7H10.7", { C: 6.7, H: 10.7 }],
    ["Al2(SO4)3·18H2O", { Al: 2, S: 3, O: 30, H: 36 }],
    ["Al2(SO4)3 * 18 H2O", { Al: 2, S: 3, O: 30, H: 36 }],
    ["CuSO4.5H2O", { Cu: 1, S: 1, O: 9, H: 10 }],
    ["CaSO4.0.5H2O", { Ca: 1, S: 1, O: 4.5, H: 1 }],
    ["CaSO4·0.5H2O", { Ca: 1, S: 1, O: 4.5, H: 1 }],
    ["KAl(SO4)2·12H2O", { K: 1, Al: 1, S: 2, O: 20, H: 24 }],
    ["Al2Si2O5(OH)4", { Al: 2, Si: 2, O: 9, H: 4 }],
    ["[Al(OH)2.5Cl0.5]2", { Al: 2, O: 5, H: 5, Cl: 1 }],
    ["{[(CH2)2]2}2", { C: 8, H: 16 }],
    ["(CuSO4.5H2O)2", { Cu: 2, S: 2, O: 18, H: 20 }],
    ["Na2CO3*10H2O*NaCl", { Na: 3, C: 1, O: 13, H: 20, Cl: 1 }],
  ])("takes %s apart", (formula, expected) => {
    const read = composition(formula);
    expect(Object.keys(read).sort()).toEqual(Object.keys(expected).sort());
    for (const [symbol, count] of Object.entries(expected))
      expectRelative(read[symbol] ?? 0, count, 1e-12);
  });

  it.each([
    ["C6H10Xx5", "the unknown element Xx at position 6"],
    ["Co2", "the unknown element Co at position 1"],
    ["(CH2", "the bracket ( at position 1 left open"],
    ["C(H2[O)", "the bracket ) at position 7, which closes none"],
    ["CH2)2", "the bracket ) at position 4, which closes none"],
    ["C()2", "nothing before position 3"],
    ["", "nothing at its end"],
    ["   ", "nothing at its end"],
    ["NaCl*", "nothing at its end"],
    ["*NaCl", "nothing before position 1"],
    ["(NaCl*)2", "nothing before position 7"],
    ["c6h10o5", '"c" at position 1'],
    ["6CO2", '"6" at position 1'],
    ["C6H10O5n", '"n" at position 8'],
    ["NH4+", "a charge at position 4"],
    ["SO4^2-", "a charge at position 4"],
    ["C0H2", "the count 0 at position 2"],
    ["C9999999H2", "the count 9999999 at position 2"],
    ["C6H10O5 starch", '"s" at position 9'],
  ])("refuses %s and says where", (formula, words) => {
    expectRefusal("impossible input", `The formula "${formula}" has ${words}`, () =>
      readFormula(formula),
    );
  });

  it("suggests no reading of C6H10On as a known one", () => {
    expectRefusal("impossible input", "the unknown element On at position 6", () =>
      readFormula("C6H10On"),
    );
  });

  it("reads brackets nested ten thousand deep without running out of stack", () => {
    expect(composition(`${"(".repeat(10_000)}C${")".repeat(10_000)}`)).toEqual({ C: 1 });
  });
});

describe("molar mass", () => {
  // Molar masses as printed by suppliers' and handbooks' tables, from memory (to their last digit or so).
  it.each([
    ["C6H12O6", 180.156, 1e-5],
    ["NaCl", 58.44, 1e-4],
    ["H2SO4", 98.08, 1e-4],
    ["Al2(SO4)3*18H2O", 666.4, 1e-4],
    ["CaCO3", 100.09, 1e-4],
    ["CuSO4*5H2O", 249.68, 1e-4],
    ["Al2Si2O5(OH)4", 258.16, 1e-4],
  ])("of %s is %d g/mol", (formula, mass, tolerance) => {
    expectRelative(molarMass(readFormula(formula)), mass, tolerance);
  });

  it("is known for every element that the reader knows", () => {
    for (const symbol of ELEMENTS.keys()) expect(molarMass(readFormula(symbol))).toBeGreaterThan(1);
  });
});
