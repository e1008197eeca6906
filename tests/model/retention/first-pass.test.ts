import { describe, expect, it } from "vitest";
import { componentRetention } from "../../../src/model/retention/component";
import { firstPassRetention } from "../../../src/model/retention/first-pass";
import { expectRefusal, expectRelative } from "../expectations";

describe("first-pass retention", () => {
  it.each([
    [0.8, 0.2, 1, 0.75],
    [8, 2, 1, 0.75],
    [0.8, 0.2, 0.9, 0.775],
    [0.8, 0, 1, 1],
    [0.8, 0.8, 1, 0],
  ])("of headbox %d, white water %d, flow ratio %d is %d", (headbox, white, ratio, retention) => {
    expectRelative(firstPassRetention(headbox, white, ratio), retention, 1e-12);
  });

  it("does not depend on the unit of the consistencies", () => {
    expectRelative(
      firstPassRetention(6.3e-3, 1.7e-3, 0.93),
      firstPassRetention(6.3, 1.7, 0.93),
      1e-12,
    );
  });

  it("of a component is that of its own consistency", () => {
    // 8 g/L with 40 % ash, 3 g/L with 60 % ash: 3.2 g/L of ash in, 1.8 g/L out.
    expectRelative(componentRetention(8, 0.4, 3, 0.6, 1), 1 - 1.8 / 3.2, 1e-12);
    expect(componentRetention(8, 1, 3, 1, 0.9)).toBe(firstPassRetention(8, 3, 0.9));
  });

  it("refuses white water that carries more than the headbox brings", () => {
    expectRefusal("impossible input", "carries 1.25 times the solids", () =>
      firstPassRetention(0.8, 1, 1),
    );
  });
});
