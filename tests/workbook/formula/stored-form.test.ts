import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  functionNames,
  shownFormula,
  storedFormula,
} from "../../../src/workbook/formula/stored-form";
import { joined, tokensOf } from "../../../src/workbook/formula/tokens";

const names = functionNames(["DOSE.TARGET", "TRIAL.LADDER"]);

describe("a formula between its shown and its stored form", () => {
  test.each([
    ["WETEND.DOSE.TARGET(B4,B5)", "_xldudf_WETEND_DOSE_TARGET(B4,B5)"],
    ["1+WETEND.DOSE.TARGET(MAX(B4,1),0.9)", "1+_xldudf_WETEND_DOSE_TARGET(MAX(B4,1),0.9)"],
    ["SUM(B4#)", "SUM(_xlfn.ANCHORARRAY(B4))"],
    ["SUM('Mill log'!$E$4#)*2", "SUM(_xlfn.ANCHORARRAY('Mill log'!$E$4))*2"],
    ["SUM(doses#)", "SUM(_xlfn.ANCHORARRAY(doses))"],
    ["SEQUENCE(3)", "_xlfn.SEQUENCE(3)"],
    ["SORT(FILTER(A1:A9,B1:B9>0))", "_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,B1:B9>0))"],
    ["STDEV.S(A1:A9)", "_xlfn.STDEV.S(A1:A9)"],
    ["NETWORKDAYS.INTL(A1,A2)", "NETWORKDAYS.INTL(A1,A2)"],
    ["LET(x,A1,y,x*2,x+y)", "_xlfn.LET(_xlpm.x,A1,_xlpm.y,_xlpm.x*2,_xlpm.x+_xlpm.y)"],
    ["MAP(A1:A3,LAMBDA(a,a^2))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.a,_xlpm.a^2))"],
    ['"WETEND.DOSE.TARGET(1)"&A1', '"WETEND.DOSE.TARGET(1)"&A1'],
    ["log[[#This Row],[SORT(x)]]*2", "log[[#This Row],[SORT(x)]]*2"],
    ["'SORT(1)'!A1+1", "'SORT(1)'!A1+1"],
    ["IF(A1=#N/A,1,2)", "IF(A1=#N/A,1,2)"],
    ["SUM({1,2;3,4})", "SUM({1,2;3,4})"],
  ])("%s is stored as %s", (shown, stored) => {
    expect(storedFormula(shown, names)).toBe(stored);
    expect(shownFormula(stored, names)).toBe(shown);
  });

  test("leaves the functions of other add-ins as they are", () => {
    const stored = "_xldudf_OTHER_THING(1)";
    expect(shownFormula(stored, names)).toBe(stored);
    expect(storedFormula(stored, names)).toBe(stored);
  });

  test("knows our functions whatever the case", () => {
    expect(shownFormula("_XLDUDF_wetend_dose_target(1,1)", names)).toBe("WETEND.DOSE.TARGET(1,1)");
    expect(shownFormula("_xlfn.anchorarray($B$1)", names)).toBe("$B$1#");
    expect(storedFormula("wetend.dose.target(1,1)", names)).toBe("_xldudf_WETEND_DOSE_TARGET(1,1)");
  });

  test("follows the namespace that runs", () => {
    const trial = functionNames(["DOSE.TARGET"], "WETENDDEV");
    expect(storedFormula("WETENDDEV.DOSE.TARGET(1,1)", trial)).toBe(
      "_xldudf_WETENDDEV_DOSE_TARGET(1,1)",
    );
  });

  test("refuses two ids that a file could not tell apart", () => {
    expect(() => functionNames(["DOSE.A_B", "DOSE.A.B"])).toThrow(
      "The functions WETEND.DOSE.A_B and WETEND.DOSE.A.B would have one name in a file",
    );
  });
});

test("cutting a formula into words loses nothing, whatever the text", () => {
  const piece = fc.oneof(
    fc.string(),
    fc.constantFrom(
      "A1",
      "$B$2:C3",
      "'x y'!",
      "[1]S!",
      "#N/A",
      "SUM(",
      ")",
      '"',
      "[",
      "]",
      "1e5",
      "A:A",
    ),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const formula = pieces.join("");
      expect(joined(tokensOf(formula))).toBe(formula);
    }),
  );
});
