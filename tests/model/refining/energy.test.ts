import { describe, expect, it } from "vitest";
import { specificEdgeLoad } from "../../../src/model/refining/edge-load";
import { netSpecificEnergy } from "../../../src/model/refining/energy";
import { Refusal } from "../../../src/model/refusal";
import { expectRelative } from "../expectations";

describe("refining", () => {
  it("spends (600 − 150) kW on 5 t/h: 90 kWh/t, by hand", () => {
    expect(netSpecificEnergy(600, 150, 5)).toBe(90);
  });

  it("strikes with 2.7 J/m: 450 kW over 500/60 revolutions a second of 20 km, by hand", () => {
    expectRelative(specificEdgeLoad(600, 150, 500, 20), 450e3 / ((500 / 60) * 20e3), 1e-15);
    expectRelative(specificEdgeLoad(600, 150, 500, 20), 2.7, 1e-15);
  });

  it("treats nothing at the no-load power, and refuses less", () => {
    expect(netSpecificEnergy(150, 150, 5)).toBe(0);
    expect(() => netSpecificEnergy(100, 150, 5)).toThrow(Refusal);
    expect(() => specificEdgeLoad(100, 150, 500, 20)).toThrow(
      "The power is 100 kW, below the no-load power of 150 kW.",
    );
  });
});
