import { expect, test } from "vitest";
import { colourOf } from "../../../src/workbook/read/colours";

test.each([
  [{ rgb: "FFAA0011" }, "#aa0011"],
  [{ indexed: "10" }, "#ff0000"],
  [{ indexed: "22" }, "#c0c0c0"],
  [{ indexed: "64" }, undefined],
  [{ auto: "1" }, undefined],
  [{ theme: "4" }, "#4472c4"],
  // The tints computed by another hand: hue, lightness and saturation of Python's colorsys.
  [{ theme: "0", tint: "-0.249977111117893" }, "#bfbfbf"],
  [{ theme: "1", tint: "0.499984740745262" }, "#7f7f7f"],
  [{ theme: "4", tint: "0.599993896298105" }, "#b4c7e7"],
  [{ theme: "4", tint: "-0.249977111117893" }, "#2f5597"],
])("%o is %s", (named, colour) => {
  expect(colourOf(named as Record<string, string>)).toBe(colour);
});
