import { describe, expect, test } from "vitest";
import { type SeenCell, testOf } from "../../../src/workbench/filtering/passes";
import type { Value } from "../../../src/workbook/book";
import { serialDate } from "../../../src/workbook/dates";
import type { Condition, Conditions, Criterion } from "../../../src/workbook/filter";

const seen = (
  value: Value,
  text = value === null ? "" : String(value),
  isDate = false,
): SeenCell => ({
  value,
  text,
  isDate,
});
const failed = seen({ error: "#N/A" }, "#N/A");

const passing = (criterion: Criterion, cells: readonly SeenCell[]) =>
  cells.filter((cell) => testOf(criterion)?.(cell)).map(({ text }) => text);

const conditions = (all: boolean, ...given: readonly Condition[]): Conditions => ({
  kind: "conditions",
  all,
  conditions: given,
});
const when = (operator: Condition["operator"], value: string) =>
  conditions(false, { operator, value });

describe("a condition", () => {
  const cells = [seen(5), seen(7.25, "7.3"), seen("5"), seen("alum"), seen("Alum 5"), seen(true, "TRUE"), failed, seen(null), seen("")]; // biome-ignore format: a column

  test.each([
    ["greater than a number holds for numbers alone", when("greaterThan", "5"), ["7.3"]],
    ["at least, at most: with the limit", when("greaterThanOrEqual", "5"), ["5", "7.3"]],
    ["less than compares the number, not what the cell shows", when("lessThan", "7.28"), ["5", "7.3"]],
    ["between has both limits", conditions(true, { operator: "greaterThanOrEqual", value: "5" }, { operator: "lessThanOrEqual", value: "7.25" }), ["5", "7.3"]],
    ["one of two is enough", conditions(false, { operator: "lessThan", value: "6" }, { operator: "equal", value: "alum" }), ["5", "alum"]],
    ["is a number holds for a text that says it, too", when("equal", "5"), ["5", "5"]],
    ["is not leaves all others, blank ones too", when("notEqual", "5"), ["7.3", "alum", "Alum 5", "TRUE", "#N/A", "", ""]],
    ["contains looks into texts alone, whatever their capitals", when("equal", "*ALUM*"), ["alum", "Alum 5"]],
    ["begins with", when("equal", "alum ?"), ["Alum 5"]],
    ["does not contain", when("notEqual", "*5*"), ["5", "7.3", "alum", "TRUE", "#N/A", "", ""]],
    ["is blank", when("equal", " "), ["", ""]],
    ["is not blank", when("notEqual", " "), ["5", "7.3", "5", "alum", "Alum 5", "TRUE", "#N/A"]],
    ["above a text follows the alphabet", when("greaterThan", "alum"), ["Alum 5"]],
  ])("%s", (_, criterion, texts) => {
    expect(passing(criterion, cells)).toEqual(texts);
  }); // biome-ignore format: a condition a line

  test("takes signs behind ~ for themselves", () => {
    const marks = [seen("5*"), seen("50"), seen("a*b")];
    expect(passing(when("equal", "5~*"), marks)).toEqual(["5*"]);
    expect(passing(when("equal", "*~**"), marks)).toEqual(["5*", "a*b"]);
  });

  test("for days compares days", () => {
    const day = (date: number) => seen(serialDate(2025, 9, date), `0${date} Sep`, true);
    const days = [day(1), day(2), day(3)];
    expect(passing(when("greaterThanOrEqual", `${serialDate(2025, 9, 2)}`), days)).toEqual(["02 Sep", "03 Sep"]); // biome-ignore format: a line
  });
});

describe("chosen values", () => {
  const chosen = (texts: string[], dates: number[][] = [], blank = false): Criterion => ({ kind: "values", texts, dates, blank }); // biome-ignore format: a line

  test("are what cells show, or the number itself; capitals are small letters", () => {
    const cells = [
      seen("Alum"),
      seen(0.05, "5 %"),
      seen(0.5, "50 %"),
      failed,
      seen(null),
      seen(""),
    ];
    expect(passing(chosen(["alum", "5 %", "0.5", "#N/A"]), cells)).toEqual(["Alum", "5 %", "50 %", "#N/A"]); // biome-ignore format: a line
    expect(passing(chosen([], [], true), cells)).toEqual(["", ""]);
  });

  test("may be a day, a month, a year, a moment", () => {
    const [first, noon] = [serialDate(2025, 9, 1), serialDate(2025, 10, 2) + 0.5];
    const cells = [seen(first, "1", true), seen(noon, "2", true), seen(serialDate(2024, 9, 1), "3", true), seen(first, "no date")]; // biome-ignore format: a line
    expect(passing(chosen([], [[2025, 9, 1]]), cells)).toEqual(["1"]);
    expect(passing(chosen([], [[2025, 10]]), cells)).toEqual(["2"]);
    expect(passing(chosen([], [[2025]]), cells)).toEqual(["1", "2"]);
    expect(passing(chosen([], [[2025, 10, 2, 12, 0, 0], [2024, 9]]), cells)).toEqual(["2", "3"]); // biome-ignore format: a line
  });
});

test("a kind that is not understood gives no test", () => {
  expect(testOf({ kind: "other", xml: "" })).toBeUndefined();
});
