import { describe, expect, it } from "vitest";
import { whiteWaterConcentration } from "../../../src/model/retention/white-water";
import { expectRefusal, expectRelative } from "../expectations";

describe("white-water concentration", () => {
  it("settles where purge carries the load away", () => {
    expect(whiteWaterConcentration(12, 150, undefined, undefined, 0)).toBe(80);
  });

  it("settles lower where part decays", () => {
    // 12 kg/h into 150 m³/h purged and 0.05 1/h of 2000 m³: 12000/250.
    expectRelative(whiteWaterConcentration(12, 150, 2000, undefined, 0.05), 48, 1e-12);
  });

  it("approaches the steady state from clean water as the balance integrated in small steps", () => {
    const [load, purge, volume, decay, hours] = [12, 150, 2000, 0.05, 9];
    const rate = (c: number) => (1000 * load - (purge + decay * volume) * c) / volume;
    const steps = 2000;
    const h = hours / steps;
    let c = 0;
    for (let i = 0; i < steps; i++) {
      const k1 = rate(c);
      const k2 = rate(c + (h / 2) * k1);
      const k3 = rate(c + (h / 2) * k2);
      const k4 = rate(c + h * k3);
      c += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    expectRelative(whiteWaterConcentration(load, purge, volume, hours, decay), c, 1e-9);
  });

  it("reaches 95 % of the steady state after ln 20 turnovers of the purge", () => {
    const hours = (2000 / 150) * Math.log(20);
    expectRelative(whiteWaterConcentration(12, 150, 2000, hours, 0), 0.95 * 80, 1e-12);
  });

  it("is 0 at the start and grows evenly where nothing leaves", () => {
    expect(whiteWaterConcentration(12, 150, 2000, 0, 0)).toBe(0);
    expectRelative(whiteWaterConcentration(12, 0, 2000, 10, 0), 60, 1e-12);
  });

  it("asks for the volume where hours or decay need it", () => {
    expectRefusal("impossible input", "hours are 5 without a volume", () =>
      whiteWaterConcentration(12, 150, undefined, 5, 0),
    );
    expectRefusal("impossible input", "decay is 0.05 without a volume", () =>
      whiteWaterConcentration(12, 150, undefined, undefined, 0.05),
    );
  });

  it("has no steady state without purge and decay", () => {
    expectRefusal("no answer", "never becomes steady", () =>
      whiteWaterConcentration(12, 0, undefined, undefined, 0),
    );
  });
});
