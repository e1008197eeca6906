import { describe, expect, test } from "vitest";
import { blank, column, emulateExcel, type HostError } from "../host/emulated-excel";

const excel = emulateExcel();
const message = (id: string, ...given: unknown[]) => (excel.one(id, ...given) as HostError).message;

describe("the EFFLUENT family", () => {
  test("answers a log of days, a bad day in its own cell", () => {
    const answer = excel.call(
      "EFFLUENT.COD",
      column(8, 9, "n/a"),
      column(0.82, 0.8, 0.8),
      340,
      1.1,
    );
    expect(answer[0]?.[0]).toBeCloseTo(538.56, 9);
    expect(answer[1]?.[0]).toBeCloseTo(673.2, 9);
    expect(answer[2]?.[0]).toMatchObject({ code: "#VALUE!" });
  });

  test("names what it cannot read in a formula, and where", () => {
    expect(message("EFFLUENT.OXYGEN", "C6H10Oz5")).toMatch(
      /unknown element Oz at position 6\. Known are H, /,
    );
    expect(message("EFFLUENT.OXYGEN", "C6(H10O5")).toMatch(/bracket \( at position 3 left open/);
    expect(excel.one("EFFLUENT.OXYGEN", "H2O2")).toMatchObject({ code: "#N/A" });
    expect(message("EFFLUENT.OXYGEN", 6)).toBe(
      "formula is 6. Give a chemical formula, e.g. C6H10O5.",
    );
  });

  test("refuses to mistake BOD for COD", () => {
    expect(message("EFFLUENT.TREATMENT", 600, 1000)).toContain("BOD cannot be above COD");
  });

  test("takes defaults for what is left out or blank in treatment", () => {
    const plain = excel.call("EFFLUENT.TREATMENT", 1000, 600, 0.1);
    expect(excel.call("EFFLUENT.TREATMENT", 1000, 600, 0.1, blank, undefined, blank)).toEqual(
      plain,
    );
    expect(plain[6]).toEqual(["total", "", 40]);
  });

  test("counts population equivalents of the directive", () => {
    expect(excel.one("EFFLUENT.EQUIVALENTS", 600)).toBe(10000);
  });

  test("says that nitrogen of 0.3 is a share, and gives the load", () => {
    expect(excel.one("EFFLUENT.NITROGEN", 10, 0.5, 100, 0.197)).toBeCloseTo(98.5, 9);
    expect(message("EFFLUENT.NITROGEN", 10, 0.5, 100, 19.7)).toContain("e.g. 0.03 for 3 %");
  });
});
