import { CellValueType } from "@univerjs/core";
import { expect, test } from "vitest";
import { shownBySection } from "../../../src/workbench/view/sections";

const { NUMBER, STRING, FORCE_STRING, BOOLEAN } = CellValueType;
const shown = (pattern: string, v: number | string, t = typeof v === "number" ? NUMBER : STRING) =>
  shownBySection(pattern, { v, t }, (name) => `the ${name}`);

test("a text shows by the part for text, and never as a number", () => {
  const pattern = '0;-0;0;"n/a: "@';
  expect(shown(pattern, "lost")).toEqual({ v: "n/a: lost", t: FORCE_STRING });
  expect(shown("0.00", "0012")).toEqual({ v: "0012", t: FORCE_STRING });
  expect(shown(pattern, "#N/A")).toEqual({});
});

test("a number of which a format shows nothing is not seen", () => {
  expect(shown("0.0;;", -3)).toEqual({ v: "", t: FORCE_STRING });
  expect(shown("0.0;-0.0;", 0)).toEqual({ v: "", t: FORCE_STRING });
  expect(shown("#", 0)).toEqual({ v: "", t: FORCE_STRING });
  expect(shown("0.0;;", 3)).toEqual({});
});

test("a number that is not negative has the colour of its format", () => {
  const coloured = (rgb: string) => ({ interceptorStyle: { cl: { rgb } } });
  expect(shown("[Blue]0.0;[Red]-0.0", 3)).toEqual(coloured("the blue"));
  expect(shown("[>=100][Color 3]0;0", 100)).toEqual(coloured("the #FF0000"));
  expect(shown("[>=100][Color 3]0;0", 99)).toEqual({});
});

test("all else is as the grid shows it", () => {
  for (const pattern of ["0.00", "yyyy-mm-dd", "@", "General", "not a code"])
    expect(shown(pattern, 3)).toEqual({});
  expect(shown("0;;", 0, BOOLEAN)).toEqual({});
});
