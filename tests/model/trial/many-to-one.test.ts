import { describe, expect, it } from "vitest";
import { studentTail } from "../../../src/model/numerics/student-t";
import { manyToOne } from "../../../src/model/trial/many-to-one";
import reference from "../../references/comparisons.json";
import table from "../../references/dunnett-two-sided-05.json";
import statistics from "../../references/trial-statistics.json";
import { expectRelative } from "../expectations";

describe("the many-to-one distribution", () => {
  it.each(table.rows)(
    "has the 5 % critical values of $degrees degrees",
    ({ degrees, critical }) => {
      critical.forEach((value, i) => {
        const equal = new Array(i + 1).fill(4);
        const computed = manyToOne(equal, 4, degrees ?? Number.POSITIVE_INFINITY).critical(0.05);
        expect(Math.abs(computed - value)).toBeLessThan(0.51e-5);
      });
    },
  );

  it.each(reference.manyToOne)(
    "has the p of unequal numbers $treated against $control, $degrees degrees, t = $t",
    (row) => {
      const p = manyToOne(row.treated, row.control, row.degrees).tail(row.t);
      expect(Math.abs(p - row.p)).toBeLessThan(1e-9);
      expectRelative(p, row.p, 1e-8);
    },
  );

  it("gives the p and the critical value of the worked comparison", () => {
    const { t, p_two, crit_two, df } = statistics.dunnett_example;
    const distribution = manyToOne([3, 3, 3], 3, df);
    t.forEach((value, i) => {
      expectRelative(distribution.tail(Math.abs(value)), p_two[i] as number, 1e-7);
    });
    expectRelative(distribution.critical(0.05), crit_two, 1e-8);
  });

  it("lies between one comparison and the sum of all", () => {
    for (const degrees of [1, 2, 5, 40, 1000]) {
      const p = manyToOne([3, 5, 8], 4, degrees).tail(2.2);
      const single = 2 * studentTail(2.2, degrees);
      expect(p).toBeGreaterThan(single);
      expect(p).toBeLessThan(3 * single);
    }
  });

  it("has a critical value that its own p gives back", () => {
    for (const alpha of [0.2, 0.05, 1e-4]) {
      const distribution = manyToOne([2, 4, 4, 9], 5, 19);
      expectRelative(distribution.tail(distribution.critical(alpha)), alpha, 1e-9);
    }
  });

  it("grows with the number of treatments and falls with the degrees of freedom", () => {
    const critical = (count: number, degrees: number) =>
      manyToOne(new Array(count).fill(5), 5, degrees).critical(0.05);
    for (let count = 1; count < 20; count++) {
      expect(critical(count + 1, 12)).toBeGreaterThan(critical(count, 12));
    }
    expect(critical(5, 10)).toBeGreaterThan(critical(5, 11));
    expectRelative(critical(5, 1e6), critical(5, Number.POSITIVE_INFINITY), 1e-5);
  });
});
