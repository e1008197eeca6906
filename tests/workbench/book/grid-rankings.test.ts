import { describe, expect, test } from "vitest";
import { gridRanking } from "../../../src/workbench/book/grid-rankings";
import { parseArea } from "../../../src/workbook/address";

const cfvo = (type: string, val?: string, more = "") =>
  `<cfvo type="${type}"${val === undefined ? "" : ` val="${val}"`}${more}></cfvo>`;
const style = { bg: { rgb: "#aa0011" } };
const ranking = (type: string, inner = "", more: Readonly<Record<string, string>> = {}) =>
  gridRanking({ attributes: { type, ...more }, inner }, style, [parseArea("B2:B9")]);

test("a scale goes through its colours, themes and tints too", () => {
  const three = `<colorScale>${cfvo("min")}${cfvo("percentile", "50")}${cfvo("num", "7.5")}<color rgb="FFF8696B"></color><color theme="0" tint="-0.249977111117893"></color><color indexed="10"></color></colorScale>`;
  expect(ranking("colorScale", three)).toEqual({
    type: "colorScale",
    config: [
      { index: 0, color: "#f8696b", value: { type: "min" } },
      { index: 1, color: "#bfbfbf", value: { type: "percentile", value: 50 } },
      { index: 2, color: "#ff0000", value: { type: "num", value: 7.5 } },
    ],
  });
});

test("bars go from bound to bound, with the numbers or without them", () => {
  const bars = (more: string) =>
    `<dataBar${more}>${cfvo("min")}${cfvo("percent", "90")}<color rgb="FF638EC6"></color></dataBar>`;
  const config = { min: { type: "min" }, max: { type: "percent", value: 90 }, isGradient: false };
  const colours = { positiveColor: "#638ec6", nativeColor: "#ff0000" };
  expect(ranking("dataBar", bars(""))).toEqual({
    type: "dataBar",
    isShowValue: true,
    config: { ...config, ...colours },
  });
  expect(ranking("dataBar", bars(' showValue="0"'))).toMatchObject({ isShowValue: false });
});

test("bars whose bounds an extension leaves to the spreadsheet begin at nothing, or at the least number below it", () => {
  const inner = `<dataBar>${cfvo("min")}${cfvo("max")}<color rgb="FF638EC6"></color></dataBar>`;
  const bars = (extension: string, ...more: string[]) => {
    const areas = ["B2:B9", ...more].map(parseArea);
    return gridRanking({ attributes: { type: "dataBar" }, inner, extension }, style, areas);
  };
  const own = { min: { type: "min" }, max: { type: "max" } };
  expect(bars("")).toMatchObject({ config: own });
  expect(bars(`<dataBar>${cfvo("min")}${cfvo("num")}</dataBar>`)).toMatchObject({ config: own });
  expect(bars(`<dataBar>${cfvo("autoMin")}${cfvo("autoMax")}</dataBar>`)).toMatchObject({
    config: { min: { type: "formula", value: "=MIN(0,$B$2:$B$9)" }, max: { type: "max" } },
  });
  const several = bars(`<dataBar>${cfvo("autoMin")}${cfvo("autoMax")}</dataBar>`, "D2:D4");
  expect(several).toMatchObject({ config: { min: { value: "=MIN(0,$B$2:$B$9,$D$2:$D$4)" } } });
});

test("icons are asked for from the highest on, turned round where the file says so", () => {
  const icons = (more = "") =>
    `<iconSet iconSet="3Arrows"${more}>${cfvo("percent", "0")}${cfvo("percent", "33", ' gte="0"')}${cfvo("num", "67")}</iconSet>`;
  const iconType = "3Arrows";
  const asked = (...ids: string[]) => [
    { operator: "greaterThanOrEqual", value: { type: "num", value: 67 }, iconType, iconId: ids[0] },
    { operator: "greaterThan", value: { type: "percent", value: 33 }, iconType, iconId: ids[1] },
    {
      operator: "greaterThanOrEqual",
      value: { type: "percent", value: 0 },
      iconType,
      iconId: ids[2],
    },
  ];
  expect(ranking("iconSet", icons())).toMatchObject({ config: asked("0", "1", "2") });
  expect(ranking("iconSet", icons(' reverse="1"'))).toMatchObject({ config: asked("2", "1", "0") });
});

test.each([
  [
    "top10",
    { rank: "3", bottom: "1" },
    { subType: "rank", value: 3, isBottom: true, isPercent: false },
  ],
  ["top10", { percent: "1" }, { subType: "rank", value: 10, isBottom: false, isPercent: true }],
  ["aboveAverage", {}, { subType: "average", operator: "greaterThan" }],
  [
    "aboveAverage",
    { aboveAverage: "0", equalAverage: "1" },
    { subType: "average", operator: "lessThanOrEqual" },
  ],
  ["duplicateValues", {}, { subType: "duplicateValues" }],
] as const)("%s %o has the look of its rule", (type, more, its) => {
  // biome-ignore format: lines
  expect(ranking(type, "", more)).toEqual({ type: "highlightCell", style, ...its });
});

describe("it is not drawn where", () => {
  test.each([
    [
      "a bound is computed",
      "colorScale",
      `<colorScale>${cfvo("formula", "2*3")}${cfvo("max")}<color rgb="FF000000"></color><color rgb="FFFFFFFF"></color></colorScale>`,
    ],
    [
      "a colour is not known",
      "colorScale",
      `<colorScale>${cfvo("min")}${cfvo("max")}<color auto="1"></color><color rgb="FFFFFFFF"></color></colorScale>`,
    ],
    ["icons are not known", "iconSet", `<iconSet iconSet="9Bells">${cfvo("min")}</iconSet>`],
  ])("%s", (_, type, inner) => {
    // biome-ignore format: lines
    expect(ranking(type, inner)).toBeUndefined();
  });
  test("deviations are counted", () => {
    expect(ranking("aboveAverage", "", { stdDev: "1" })).toBeUndefined();
  });
});
