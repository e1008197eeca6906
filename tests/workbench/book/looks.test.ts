import { VerticalAlign } from "@univerjs/core";
import { expect, test } from "vitest";
import { gridStyle, styleOf } from "../../../src/workbench/book/looks";
import type { Style } from "../../../src/workbook/book";

test("a text stands in the grid where it stands in its file, wrapped or not, and is read as such", () => {
  const looks: [Style, VerticalAlign | undefined][] = [
    [{ vertical: "center", wrap: true }, VerticalAlign.MIDDLE],
    [{ vertical: "top" }, VerticalAlign.TOP],
    [{ wrap: true }, undefined],
  ];
  for (const [look, place] of looks) {
    expect(gridStyle(look).vt).toBe(place);
    expect(styleOf(gridStyle(look))).toEqual(look);
  }
});
