import { describe, expect, test } from "vitest";
import {
  type BlankAs,
  blank,
  column,
  emulateExcel,
  errorForms,
  HostError,
  row,
  wholeColumn,
} from "./emulated-excel";
import { SHEET_ROWS } from "./ranges";

const code = (cell: unknown) => (cell as HostError).code;
const message = (cell: unknown) => (cell as HostError).message;

describe.each<[string, BlankAs]>([
  ["the web, where a blank cell is null", null],
  ["the desktop, where a blank cell in a range is an empty text", ""],
])("on %s", (_, blankAs) => {
  const excel = emulateExcel(blankAs);

  test("an argument that is left out, a blank cell and the default give one answer", () => {
    const left = excel.one("DOSE.PUMP", 8, 9.3, 0.03);
    expect(excel.one("DOSE.PUMP", 8, 9.3, 0.03, blank)).toBe(left);
    expect(excel.one("DOSE.PUMP", 8, 9.3, 0.03, 1)).toBe(left);
  });

  test("a blank cell in the midst of a range is an error of its own row", () => {
    const answer = excel.call("DOSE.TARGET", column(6, blank, 3), 0.75);
    expect(answer.map(([cell]) => (cell instanceof HostError ? message(cell) : cell))).toEqual([
      8,
      "retained is blank. Give 0 or more [kg/t].",
      4,
    ]);
  });

  test("blank cells after the last value are cut", () => {
    expect(excel.call("DOSE.TARGET", column(6, 3, blank, blank), 0.75)).toEqual([[8], [4]]);
    expect(
      excel.call(
        "STRENGTH.FIT",
        column(0, 4, 8, 12, 16, blank),
        column(40, 46, 48, 49, 49.5, blank),
      ).length,
    ).toBeGreaterThan(3);
  });

  test("whole columns of a million cells give as many rows as are filled", () => {
    const doses = wholeColumn(6, 3, 1.5);
    expect(doses).toHaveLength(SHEET_ROWS);
    expect(excel.call("DOSE.TARGET", doses, wholeColumn(0.75, 0.5, 0.25))).toEqual([[8], [6], [6]]);
    expect(excel.call("PARTITION.AREA", wholeColumn(0.5, 0.5), wholeColumn(1, 3))).toEqual([
      [0.25],
      [0.75],
    ]);
  });

  test("a column that is blank altogether says so", () => {
    expect(message(excel.one("DOSE.TARGET", wholeColumn(), 0.75))).toContain("retained is blank");
  });
});

describe("on the desktop, where a blank single cell is 0", () => {
  const excel = emulateExcel(0);
  test.each([
    ["DOSE.PUMP", [8, 9.3, 0.03, blank], "density is 0 or blank."],
    ["STRENGTH.INDEX", [3.6, blank], "grammage is 0 or blank."],
    ["PARTITION.AREA", [row(0.8, 0.2), row(1.5, blank)], "surfaces (2 of 2) is 0 or blank."],
  ])("%s refuses it where 0 cannot be meant, and names both", (id, given, start) => {
    expect(message(excel.one(id, ...given))).toMatch(
      new RegExp(`^${start.replace(/[()]/g, "\\$&")}`),
    );
  });
});

describe("whatever the host", () => {
  const excel = emulateExcel();

  test.each(["#DIV/0!", "#N/A", "#NAME?", "#REF!", "#NUM!", "#NULL!"])(
    "%s in an input comes back, in every form that a host gives it",
    (one) => {
      for (const form of errorForms(one)) {
        expect(code(excel.one("DOSE.TARGET", form, 0.75))).toBe(one);
        expect(
          excel
            .call("DOSE.TARGET", column(6, form), 0.75)
            .map(([cell]) => (cell instanceof HostError ? cell.code : cell)),
        ).toEqual([8, one]);
        expect(code(excel.one("PARTITION.AREA", row(0.8, form), row(1.5, 8)))).toBe(one);
      }
    },
  );

  test("a truth value is no number", () => {
    for (const truth of [true, false]) {
      expect(message(excel.one("DOSE.TARGET", truth, 0.75))).toContain("not a number");
    }
  });

  test("a date is its serial number", () => {
    const answer = excel.call(
      "COST.BUDGET",
      column(10_000, 9000),
      8,
      0.6,
      undefined,
      column(45_292, 45_323),
    );
    expect(answer.flat()).toContain(45_292);
  });

  test("a text that looks like a number is refused with the way to mend it", () => {
    expect(message(excel.one("DOSE.TARGET", "6.5", 0.75))).toContain("convert the column");
  });

  test("a number with a format or a unit of its own counts as the number", () => {
    expect(
      excel.one(
        "DOSE.TARGET",
        { type: "FormattedNumber", basicType: "Double", basicValue: 6, numberFormat: "0.0" },
        0.75,
      ),
    ).toBe(8);
  });

  test("one number, a row, a column and a block of one function", () => {
    expect(excel.one("DOSE.TARGET", 6, 0.75)).toBe(8);
    expect(excel.call("DOSE.TARGET", row(6, 3), 0.75)).toEqual([[8, 4]]);
    expect(excel.call("DOSE.TARGET", column(6, 3), 0.75)).toEqual([[8], [4]]);
    expect(excel.call("DOSE.TARGET", column(6, 3), row(0.75, 0.5))).toEqual([
      [8, 12],
      [4, 6],
    ]);
  });

  test("an error in the place of a text or a truth value comes back as well", () => {
    for (const form of errorForms("#REF!")) {
      expect(code(excel.one("EFFLUENT.OXYGEN", form))).toBe("#REF!");
      expect(code(excel.one("EFFLUENT.OXYGEN", "C3H5NO", form))).toBe("#REF!");
    }
  });

  test("a function that is not there is #NAME?, and a call that Excel would not allow is a fault of the test", () => {
    expect(code(excel.one("DOSE.NOTHING", 1))).toBe("#NAME?");
    expect(() => excel.call("DOSE.TARGET", 1)).toThrow("overallRetention is not optional");
    expect(() => excel.call("DOSE.TARGET", 1, 2, 3)).toThrow("too many arguments");
  });

  test("functions that hand back nothing wrong leave the arguments as they were", () => {
    const given = column(6, blank, 3);
    const before = structuredClone(given.map(([cell]) => typeof cell));
    excel.call("DOSE.TARGET", given, 0.75);
    expect(given.map(([cell]) => typeof cell)).toEqual(before);
  });
});
