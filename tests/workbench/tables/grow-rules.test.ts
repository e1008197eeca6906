import { expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { gridRanking } from "../../../src/workbench/book/grid-rankings";
import { grownFormat } from "../../../src/workbench/tables/grow-rules";
import { parseArea } from "../../../src/workbook/address";

const inner = '<dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar>';
const extension = '<dataBar><cfvo type="autoMin"/><cfvo type="autoMax"/></dataBar>';

/** Bars that begin at nothing, or at the least number below it. */
function bars(...places: string[]) {
  const areas = places.map(parseArea);
  const ranking = { attributes: { type: "dataBar" }, inner, extension };
  const rule = gridRanking(ranking, {}, areas);
  if (!rule) throw new Error("The bars are not drawn.");
  return { cfId: "format-0-0", ranges: areas.map(rangeOf), stopIfTrue: false, rule };
}

const [body, grown] = [parseArea("A2:C9"), parseArea("A2:C12")];

test("bars over a column of a table begin at the least number of the rows that it takes in, too", () => {
  expect(grownFormat(bars("B2:B9"), body, grown)).toEqual(bars("B2:B12"));
});

test("and over other cells beside it", () => {
  expect(grownFormat(bars("B2:B9", "F2:F4"), body, grown)).toEqual(bars("B2:B12", "F2:F4"));
});
