import { invertColorByMatrix } from "@univerjs/core";
import { defaultTheme } from "@univerjs/themes";
import { expect, test } from "vitest";
import { gridTheme } from "../../../src/workbench/grid/grid-theme";

type Colour = readonly [number, number, number];

/** WCAG 2.2, relative luminance and contrast ratio. */
function luminance(colour: Colour): number {
  const linear = (part: number) =>
    part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  const [red, green, blue] = colour.map((part) => linear(part / 255)) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const contrast = (one: Colour, other: Colour) => {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [
    number,
    number,
  ];
  return (light + 0.05) / (dark + 0.05);
};

const partsOf = (hex: string) =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number];

/** WCAG 2.2, success criterion 1.4.3. */
const READABLE = 4.5;

const colours = Object.values(gridTheme["loop-color"]);

test.each(colours)(
  "what a formula reads can be read in %s, on white and inverted on black",
  (name) => {
    const [family, step] = name.split(".") as ["blue", 700];
    const colour = partsOf(defaultTheme[family][step]);
    expect(contrast(colour, [255, 255, 255])).toBeGreaterThanOrEqual(READABLE);
    expect(contrast(invertColorByMatrix(colour), [0, 0, 0])).toBeGreaterThanOrEqual(READABLE);
  },
);

test("each of the twelve that the grid takes in turn is there, and is another", () => {
  expect(Object.keys(gridTheme["loop-color"])).toEqual(Object.keys(defaultTheme["loop-color"]));
  expect(new Set(colours).size).toBe(12);
});
