import { describe, expect, test } from "vitest";
import { blank, column, emulateExcel, HostError, row } from "../host/emulated-excel";

const excel = emulateExcel();
const message = (cell: unknown) => (cell as HostError).message;
const code = (cell: unknown) => (cell as HostError).code;

describe("a single number", () => {
  test("may come wrapped in an object that carries its basic value", () => {
    const wrapped = { type: "FormattedNumber", basicType: "Double", basicValue: 6.5 };
    expect(excel.one("DOSE.TARGET", wrapped, 0.5)).toBe(13);
  });

  test.each([
    [-3, "retained is -3. Give 0 or more [kg/t]."],
    [
      "8",
      'retained is the text "8" that looks like a number: convert the column. Give 0 or more [kg/t].',
    ],
    [
      "8,5",
      'retained is the text "8,5" that looks like a number: convert the column. Give 0 or more [kg/t].',
    ],
    ["much", 'retained is the text "much". Give 0 or more [kg/t].'],
    [true, "retained is TRUE, not a number. Give 0 or more [kg/t]."],
    [blank, "retained is missing. Give 0 or more [kg/t]."],
    [null, "retained is missing. Give 0 or more [kg/t]."],
    ["", "retained is missing. Give 0 or more [kg/t]."],
    [{ type: "Entity", properties: {} }, "retained is no plain value. Give 0 or more [kg/t]."],
  ])("that cannot be is refused by name, value and what is allowed: %s", (given, expected) => {
    const cell = excel.one("DOSE.TARGET", given, 0.5);
    expect(code(cell)).toBe("#VALUE!");
    expect(message(cell)).toBe(expected);
  });

  test("of 0 where none can be is said to be 0 or blank, since a desktop hands a blank over as 0", () => {
    const desktop = emulateExcel(0);
    expect(message(desktop.one("DOSE.TARGET", 6.5, blank))).toBe(
      "overallRetention is 0 or blank. Give a fraction above 0, up to 1, e.g. 0.03 for 3 %.",
    );
  });

  test("typed as a percentage is refused with the way to write it", () => {
    expect(message(excel.one("DOSE.TARGET", 6.5, 82))).toBe(
      "overallRetention is 82. Give a fraction above 0, up to 1, e.g. 0.03 for 3 %.",
    );
  });

  test.each([
    [23.547806138893527, "23.5478"],
    [1.0000001, "1.0000001"],
  ])("is shown in six figures, unless they would read as allowed: %s", (given, shown) => {
    expect(message(excel.one("DOSE.TARGET", 6.5, given))).toBe(
      `overallRetention is ${shown}. Give a fraction above 0, up to 1, e.g. 0.03 for 3 %.`,
    );
  });

  test.each(["#DIV/0!", "#N/A", "#REF!", "#NAME?", "#NUM!"])(
    "that is the error %s comes back as that error",
    (error) => {
      expect(code(excel.one("DOSE.TARGET", new HostError(error), 0.5))).toBe(error);
      const asValue = { type: "Error", basicType: "Error", basicValue: error };
      expect(code(excel.one("DOSE.TARGET", asValue, 0.5))).toBe(error);
    },
  );

  test.each([
    ["DOSE.CONVERT", [8, "kg/t", "g/t", "dry"], "moisture"],
    ["STRENGTH.RESPONSE", [8, 40, 2, "n/a", "straight"], "scale"],
    ["STRENGTH.DOSEFOR", [45, 40, 10, 5, "exponential", "n/a"], "highestTried"],
  ])("that cannot be is refused even where the formula does without it: %s", (id, given, name) => {
    expect(message(excel.one(id, ...given))).toContain(`${name} is the text "`);
    const [first, ...rest] = given;
    const inRange = excel.call(id, column(first, first), ...rest);
    expect(inRange.map(([cell]) => code(cell))).toEqual(["#VALUE!", "#VALUE!"]);
  });

  test("whose answer would overflow is refused, never an infinity", () => {
    const cell = excel.one("DOSE.PRODUCT", 1e308, 1e-9);
    expect(message(cell)).toMatch(/too large/);
  });
});

describe("ranges", () => {
  test("are worked element by element, and a row and a column make a grid", () => {
    expect(excel.call("DOSE.PRODUCT", column(8, 4), row(0.5, 0.8))).toEqual([
      [16, 10],
      [8, 5],
    ]);
  });

  test("keep a bad element's error in its own cell", () => {
    const answer = excel.call("DOSE.TARGET", column(6, "x", blank, new HostError("#N/A"), 3), 0.5);
    expect(answer[0]).toEqual([12]);
    expect(message(answer[1]?.[0])).toContain('retained is the text "x"');
    expect(message(answer[2]?.[0])).toBe("retained is blank. Give 0 or more [kg/t].");
    expect(code(answer[3]?.[0])).toBe("#N/A");
    expect(answer[4]).toEqual([6]);
  });

  test("of whole columns are cut behind the last filled row, however many blanks follow", () => {
    const millionRows = Array.from({ length: 1_048_576 }, (_, i) => [i < 3 ? 6 : null]);
    expect(excel.call("DOSE.TARGET", millionRows, 0.5)).toEqual([[12], [12], [12]]);
  });

  test("that are blank from end to end are refused", () => {
    const cell = excel.one("DOSE.TARGET", column(blank, blank), 0.5);
    expect(message(cell)).toBe("retained is blank. Give at least one row.");
  });

  test("of unequal length are refused, naming both", () => {
    const cell = excel.one("DOSE.TARGET", column(6, 7, 8), column(0.5, 0.6));
    expect(message(cell)).toBe(
      "retained has 3 rows and overallRetention has 2. Give ranges of one length.",
    );
    const wide = excel.one("DOSE.TARGET", row(6, 7, 8), row(0.5, 0.6));
    expect(message(wide)).toContain("retained has 3 columns and overallRetention has 2");
  });

  test("of unequal length agree where the longer one is blank behind the shorter", () => {
    const answer = excel.call("DOSE.TARGET", column(6, 7, blank), column(0.5, 0.5));
    expect(answer).toEqual([[12], [14]]);
  });

  test("take the default where a cell of an optional argument is blank", () => {
    expect(excel.call("DOSE.PRODUCT", column(8, 8), 0.8, column(0.5, blank))).toEqual([[20], [10]]);
  });
});

describe("a choice of a unit", () => {
  test("is matched without regard to case and stray blanks", () => {
    expect(excel.one("DOSE.CONVERT", 16, " LB/Short Ton ", "KG/T")).toBe(8);
  });

  test.each([
    ["pounds", 'from is "pounds". Give one of: kg/t, kg/t air-dry, lb/short ton, fraction, g/t.'],
    [5, "from is 5. Give one of: kg/t, kg/t air-dry, lb/short ton, fraction, g/t."],
    [undefined, "from is missing. Give one of: kg/t, kg/t air-dry, lb/short ton, fraction, g/t."],
  ])("that is none of the words is refused with the words: %s", (given, expected) => {
    expect(message(excel.one("DOSE.CONVERT", 16, given ?? null, "kg/t"))).toBe(expected);
  });
});
