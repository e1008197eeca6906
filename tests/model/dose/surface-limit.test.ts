import { describe, it } from "vitest";
import { surfaceLimit } from "../../../src/model/dose/surface-limit";
import { expectRefusal, expectRelative } from "../expectations";

describe("surface limit", () => {
  it("is the sum of sites over the furnish", () => {
    // 0.55·1.5·8 + 0.25·8·10 + 0.20·12·1.667 = 6.6 + 20 + 4.0008 kg/t.
    expectRelative(surfaceLimit([0.55, 0.25, 0.2], [1.5, 8, 12], [8, 10, 1.667]), 30.6008, 1e-12);
  });

  it("refuses shares that are not a whole furnish, and unequal lengths", () => {
    expectRefusal("impossible input", "shares sum to 0.8", () =>
      surfaceLimit([0.55, 0.25], [1, 1], [1, 1]),
    );
    expectRefusal("impossible input", "shares has 2 values and capacities has 1.", () =>
      surfaceLimit([0.5, 0.5], [1, 1], [1]),
    );
  });
});
