import { describe, expect, it } from "vitest";
import { productDose } from "../../../src/model/dose/product";
import { pumpFlow } from "../../../src/model/dose/pump";
import { stockThroughput } from "../../../src/model/dose/stock-flow";
import { targetDose } from "../../../src/model/dose/target";
import { machineThroughput } from "../../../src/model/dose/throughput";
import { expectRelative } from "../expectations";

describe("what to set", () => {
  it("adds more than what shall stay", () => {
    expectRelative(targetDose(6.5, 0.8), 8.125, 1e-12);
    expect(targetDose(0, 0.8)).toBe(0);
  });

  it("needs more product than dry active additive", () => {
    // 8 kg/t of a starch at 88 % solids, all of it active.
    expectRelative(productDose(8, 0.88, 1), 9.090909, 1e-6);
    expectRelative(productDose(8, 0.2, 0.5), 80, 1e-12);
  });

  it("pumps 2455.446 L/h for 8 kg/t at 9.3 t/h, 3 % and 1.01 kg/L", () => {
    expectRelative(pumpFlow(8, 9.3, 0.03, 1.01), 2455.446, 1e-6);
  });

  it("makes 800 m/min of 5 m at 100 g/m² and 7 % moisture 22.32 t/h oven-dry", () => {
    expectRelative(machineThroughput(800, 5, 100, 0.07), 22.32, 1e-12);
  });

  it("carries 14 t/h in 400 m³/h of stock at 3.5 %", () => {
    expectRelative(stockThroughput(400, 0.035, 1), 14, 1e-12);
    expectRelative(stockThroughput(400, 0.035, 1.01), 14.14, 1e-12);
  });
});
