import { describe, expect, it } from "vitest";
import { pageTensileIndex } from "../../../src/model/strength/page";
import { breakingLength, tensileIndex } from "../../../src/model/strength/tensile-index";
import { expectRelative } from "../expectations";

describe("the tensile index", () => {
  it("is strength over grammage (ISO 1924-2): 3.6 kN/m at 60 g/m² is 60 N·m/g", () => {
    expect(tensileIndex(3.6, 60)).toBe(60);
  });

  it("is a breaking length when divided by standard gravity: the weight of that strip is its strength", () => {
    const strength = 3600; // N/m
    const weightPerMetre = 0.06 * 9.80665; // N/m² of a 60 g/m² sheet
    expectRelative(breakingLength(60) * 1000 * weightPerMetre, strength, 1e-15);
  });
});

describe("Page's equation", () => {
  it("gives the worked value 59.4233 N·m/g (Page 1969 in these units, by hand)", () => {
    expectRelative(pageTensileIndex(120, 0.2, 5, 70, 2.3, 0.4), 59.4233, 1e-6);
  });

  it("agrees with the SI form 1/T = 9/(8Z) + 12·C/(b·P·L·RBA)", () => {
    const si = 1 / (9 / (8 * 120e3) + (12 * 0.2e-6) / (5e6 * 70e-6 * 2.3e-3 * 0.4));
    expectRelative(pageTensileIndex(120, 0.2, 5, 70, 2.3, 0.4) * 1e3, si, 1e-14);
  });

  it("tends to 8/9 of the zero-span strength when bonds are strong, and to 0 with the bonded area", () => {
    expectRelative(pageTensileIndex(120, 0.2, 1e12, 70, 2.3, 0.4), (120 * 8) / 9, 1e-9);
    expect(pageTensileIndex(120, 0.2, 5, 70, 2.3, 0)).toBe(0);
  });
});
