import { describe, expect, it } from "vitest";
import { noncentralTail } from "../../../src/model/numerics/noncentral-t";
import { studentTail } from "../../../src/model/numerics/student-t";
import reference from "../../references/comparisons.json";

describe("the noncentral t", () => {
  it.each(reference.noncentralTail as number[][])(
    "has the upper tail at t = %f, %f degrees, shift %f within 1e-10",
    (t, degrees, shift, p) => {
      const tail = noncentralTail(t as number, degrees as number, shift as number);
      expect(Math.abs(tail - (p as number))).toBeLessThan(1e-10);
    },
  );

  it.each([1, 2, 7, 60, 1000])("is Student's t without a shift, %i degrees", (degrees) => {
    for (const t of [0, 0.4, 3, 15]) {
      expect(Math.abs(noncentralTail(t, degrees, 0) - studentTail(t, degrees))).toBeLessThan(1e-10);
    }
  });

  it("is certain for a shift that drowns the test", () => {
    expect(noncentralTail(4.3, 2, 1e6)).toBeCloseTo(1, 9);
  });
});
