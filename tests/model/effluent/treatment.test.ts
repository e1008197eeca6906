import { describe, expect, it } from "vitest";
import { aerobicTreatment } from "../../../src/model/effluent/treatment";
import { expectRefusal, expectRelative } from "../expectations";

const PRICES = { power: 0.1, sludge: 0.2, nitrogen: 1.5, phosphorus: 4 };
const PLANT = { oxygenPerBod: 1, aeration: 1.5, sludgeYield: 0.45 };

describe("aerobic treatment", () => {
  it("takes oxygen, power and nutrients by the BOD, and costs their sum", () => {
    const day = aerobicTreatment(1000, 600, PRICES, PLANT);
    const expected = {
      oxygen: 600,
      aerationPower: 400,
      sludge: 270,
      // BOD : N : P = 100 : 5 : 1 (common practice, no source).
      nitrogen: 30,
      phosphorus: 6,
      powerCost: 40,
      sludgeCost: 54,
      nitrogenCost: 45,
      phosphorusCost: 24,
      totalCost: 163,
      treatableShare: 0.6,
    };
    for (const [name, value] of Object.entries(expected)) {
      expectRelative(day[name as keyof typeof day] as number, value, 1e-12);
    }
  });

  it("costs nothing on a day without load", () => {
    const day = aerobicTreatment(0, 0, PRICES, PLANT);
    expect(day.totalCost).toBe(0);
    expect(day.treatableShare).toBeUndefined();
  });

  it("refuses BOD above COD", () => {
    expectRefusal("impossible input", "BOD is 700 kg/d and the COD 600 kg/d", () =>
      aerobicTreatment(600, 700, PRICES, PLANT),
    );
  });
});
