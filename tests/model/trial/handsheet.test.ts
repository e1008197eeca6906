import { describe, it } from "vitest";
import { handsheet } from "../../../src/model/trial/handsheet";
import { expectRelative } from "../expectations";

describe("laboratory sheets", () => {
  it("take 1.20 g of fibre in 400 mL of stock of 0.3 % for 60 g/m² on 0.02 m²", () => {
    // 60 g/m² oven-dry: TAPPI T 205; 400 mL of 0.3 % stock for 1.20 g: from memory, high confidence.
    const sheet = handsheet(10, 0.003, 0.01, 60, 0.02, 1);
    expectRelative(sheet.fibreGrams, 1.2, 1e-15);
    expectRelative(sheet.stockMillilitres, 400, 1e-15);
    expectRelative(sheet.additiveMilligrams, 12, 1e-15);
    expectRelative(sheet.solutionMillilitres, 1.2, 1e-15);
  });

  it("take five times as much for a batch of five", () => {
    const one = Object.values(handsheet(8, 0.005, 0.02, 75, 0.0317, 1));
    const five = Object.values(handsheet(8, 0.005, 0.02, 75, 0.0317, 5));
    five.forEach((value, i) => {
      expectRelative(value, 5 * (one[i] as number), 1e-15);
    });
  });
});
