import { describe, expect, test } from "vitest";
import { column, emulateExcel, type HostError } from "../host/emulated-excel";

const excel = emulateExcel();
const message = (id: string, ...given: unknown[]) => (excel.one(id, ...given) as HostError).message;

describe("the CHARGE family", () => {
  test("turns substitution into nitrogen and back over a column", () => {
    const substitutions = [0.02, 0.035, 0.05];
    const nitrogen = excel.call("CHARGE.NITROGEN", column(...substitutions));
    const back = excel.call("CHARGE.SUBSTITUTION", nitrogen).map(([cell]) => cell as number);
    for (const [i, one] of back.entries()) expect(one).toBeCloseTo(substitutions[i] as number, 12);
  });

  test("takes 0.3 for 0.3 % of nitrogen, and 0.8 for 0.8 % of consistency, as the slips that they are", () => {
    expect(message("CHARGE.SUBSTITUTION", 0.3)).toBe(
      "nitrogen is 0.3. Give a fraction from 0 to 0.05, e.g. 0.003 for 0.3 %.",
    );
    expect(message("CHARGE.LIMIT", 5, 0, 0.8, 0.2)).toContain(
      "consistency is 0.8. Give a fraction",
    );
  });

  test("answers #N/A in its own cell where the others already exceed the demand", () => {
    const answer = excel.call("CHARGE.LIMIT", 5, 0, 0.03, 0.2, column(0, 6, 2));
    expect(answer[0]).toEqual([25]);
    expect(answer[1]?.[0]).toMatchObject({ code: "#N/A" });
    expect(answer[2]).toEqual([15]);
  });
});
