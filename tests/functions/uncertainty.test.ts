import { describe, expect, test } from "vitest";
import { column, emulateExcel, HostError, row } from "../host/emulated-excel";

const excel = emulateExcel();
const sampled = (stream: number) =>
  excel.call("UNCERTAINTY.SAMPLE", 1, 2, 3, 1000, 42, "triangular", stream);

describe("UNCERTAINTY.SAMPLE", () => {
  test("spills a column, in another order for each stream", () => {
    const one = sampled(1);
    expect(one).toHaveLength(1000);
    expect(excel.call("UNCERTAINTY.SAMPLE", 1, 2, 3, 1000, 42)).toEqual(one);
    expect(sampled(2)).not.toEqual(one);
  });

  test("refuses a normal whose likely value is off the middle, and a shape it does not know", () => {
    const skewed = excel.one("UNCERTAINTY.SAMPLE", 1, 1.5, 3, 10, 1, "normal") as HostError;
    expect(skewed).toMatchObject({ code: "#VALUE!" });
    expect(skewed.message).toContain("Give that as likely, or choose triangular.");
    expect(excel.one("UNCERTAINTY.SAMPLE", 1, 2, 3, 10, 1, "lognormal")).toMatchObject({
      code: "#VALUE!",
      message: 'shape is "lognormal". Give one of: triangular, uniform, normal.',
    });
  });
});

describe("UNCERTAINTY.SUMMARY", () => {
  test("counts the errors among the values and summarises the rest", () => {
    const numbers = Array.from({ length: 100 }, (_, i) => i + 1);
    const broken = [new HostError("#N/A"), new HostError("#VALUE!")];
    const table = excel.call("UNCERTAINTY.SUMMARY", column(...numbers, ...broken));
    expect(table.at(-1)).toEqual(["values that were errors", 2]);
    expect(table[0]).toEqual(["mean", 50.5]);
    expect(table.slice(3, 5)).toEqual([
      ["lower limit", 3],
      ["upper limit", 98],
    ]);
  });

  test("passes the first error on where all values are errors", () => {
    const broken = [new HostError("#DIV/0!"), new HostError("#N/A")];
    expect(excel.one("UNCERTAINTY.SUMMARY", column(...broken))).toMatchObject({ code: "#DIV/0!" });
  });

  test("says how many values are too few", () => {
    expect(excel.one("UNCERTAINTY.SUMMARY", column(1, 2, new HostError("#N/A")))).toMatchObject({
      code: "#N/A",
      message:
        "The number of values is 2, too small for an interval that holds 0.95 of them. Give at least 11.",
    });
  });
});

describe("UNCERTAINTY.DRIVERS", () => {
  test("finds what drives a product, names in a row", () => {
    const [price, dose] = [sampled(1), sampled(2)] as [number[][], number[][]];
    const inputs = price.map((line, i) => [line[0], dose[i]?.[0], 7]);
    const results = price.map((line, i) => [(line[0] as number) * (dose[i]?.[0] as number) ** 3]);
    const table = excel.call("UNCERTAINTY.DRIVERS", results, inputs, row("price", "dose", "width"));
    expect(table.map(([name]) => name)).toEqual(["input", "dose", "price", "width"]);
    expect(table[3]).toEqual(["width", 0, 0]);
    const shares = table.slice(1).map((line) => line[2] as number);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 1);
  });

  test("takes a single row or column for one input, and refuses inputs of another length", () => {
    const one = excel.call("UNCERTAINTY.DRIVERS", column(1, 2, 3), column(3, 2, 1));
    expect(one[1]).toEqual(["input 1", -1, 1]);
    expect(excel.call("UNCERTAINTY.DRIVERS", row(1, 2, 3), row(3, 2, 1))).toEqual(one);
    expect(excel.one("UNCERTAINTY.DRIVERS", column(1, 2, 3), column(3, 2))).toMatchObject({
      code: "#VALUE!",
      message: "results has 3 values and each input has 2. Give as many of both.",
    });
  });

  test("names the column and the place of a bad cell", () => {
    const answer = excel.one("UNCERTAINTY.DRIVERS", column(1, 2, 3), [
      [1, 4],
      [2, "5"],
      [3, 6],
    ]) as HostError;
    expect(answer.message).toContain('inputs, column 2 (2 of 3) is the text "5"');
  });
});
