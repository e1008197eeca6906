import { BorderStyleTypes, VerticalAlign } from "@univerjs/core";
import { expect, test } from "vitest";
import { gridStyle, styleOf } from "../../../src/workbench/book/looks";
import { borderLines, type Style } from "../../../src/workbook/book";

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

test("a border has its line and its colour in the grid, on each side its own", () => {
  const thin: Style = { border: { left: "#112233", bottom: "#000000" } };
  expect(gridStyle(thin).bd?.l).toEqual({ s: BorderStyleTypes.THIN, cl: { rgb: "#112233" } });
  expect(styleOf(gridStyle(thin))).toEqual(thin);
  for (const line of borderLines) {
    const look: Style = {
      border: { top: "#112233", right: "#000000" },
      borderLines: { top: line },
    };
    expect(styleOf(gridStyle(look))).toEqual(look);
  }
  const none = { s: BorderStyleTypes.NONE, cl: { rgb: "#000000" } };
  expect(styleOf({ bd: { t: none } })).toEqual({});
});
