import { describe, expect, test } from "vitest";
import { column, emulateExcel, row } from "../host/emulated-excel";

const excel = emulateExcel();

const gains = row(8, 6, 0.25);
const scales = row(6, 4, 1);
const prices = row(0.55, 0.75, 0.11);
const maxima = row(20, 15, 60);
const shapes = row("exponential", "Exponential ", "straight");
const drainage = row(0.3, 0.5, 0.8);

const mix = (target: unknown, ...rest: unknown[]) =>
  excel.call("COST.MIX", target, gains, scales, prices, maxima, ...rest);
const refusal = (code: string, words: string) => [
  [expect.objectContaining({ code, message: expect.stringContaining(words) })],
];

describe("COST.MIX", () => {
  test("answers a row an option, the total, the limits that bind, the saving", () => {
    const table = mix(6, shapes, drainage, 8);
    expect(table.map(([label]) => label)).toEqual([
      "option",
      1,
      2,
      3,
      "total",
      "limits that bind",
      "saving against the cheapest single option [money/t]",
    ]);
    const costs = table.slice(1, 4).map((line) => line[3] as number);
    expect(costs.reduce((sum, cost) => sum + cost, 0)).toBeCloseTo(table[4]?.[3] as number, 12);
    expect(table[5]?.[1]).toBe("side limit 1");
  });

  test("takes one shape for all, and exponential where none is given", () => {
    expect(mix(6, "exponential")).toEqual(mix(6, row("exponential", "exponential", "exponential")));
    expect(mix(6)).toEqual(mix(6, "exponential"));
  });

  test("takes uses of one limit as a row or a column, and of several as a block, a row an option", () => {
    const asRow = mix(6, shapes, drainage, 8);
    expect(mix(6, shapes, column(0.3, 0.5, 0.8), 8)).toEqual(asRow);
    const block = [
      [0.3, 1],
      [0.5, 1],
      [0.8, 1],
    ];
    expect(mix(6, shapes, block, row(8, 1000))).toEqual(asRow);
  });

  test("names what of the option the mix comes up against", () => {
    expect(mix(18, shapes)[5]?.[1]).toBe("maximum of option 3");
  });

  test("leaves the saving blank where no option does it alone", () => {
    expect(mix(20, shapes)[6]?.slice(1, 3)).toEqual(["", "no option does it alone"]);
  });

  test("says how far the options reach where the target is beyond it", () => {
    expect(mix(40, shapes)).toEqual(refusal("#N/A", "the options reach 28.57 N·m/g"));
  });

  test("refuses a shape that is none, limits without uses, and prices for some options only", () => {
    expect(mix(6, row("exponential", "s-shaped", "straight"))).toEqual(
      refusal("#VALUE!", 'shapes (2 of 3) is "s-shaped". Give one of: exponential'),
    );
    expect(mix(6, shapes, null, 8)).toEqual(refusal("#VALUE!", "sideUse has 0 columns"));
    expect(excel.call("COST.MIX", 6, gains, scales, row(0.55, 0.75), maxima)).toEqual(
      refusal("#VALUE!", "plateauGains has 3 values and prices has 2."),
    );
  });
});
