import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { keptAtCells } from "../../../src/workbook/read/at-cells";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";

test("comments and links are found on the sheet that has them", async () => {
  const workbook = new ExcelJS.Workbook();
  const lots = workbook.addWorksheet("Lots");
  lots.getCell("A1").note = "a comment";
  lots.getCell("A2").value = { text: "order", hyperlink: "https://example.org/" };
  workbook.addWorksheet("Links").getCell("A1").value = { text: "b", hyperlink: "https://example.org/" }; // biome-ignore format: a line
  workbook.addWorksheet("Plain").getCell("A1").value = 1;
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  const opened = await readWorkbook(bytes, functionNames([]));
  expect(await keptAtCells(opened, "Lots")).toEqual(["comments", "links"]);
  expect(await keptAtCells(opened, "Links")).toEqual(["links"]);
  expect(await keptAtCells(opened, "Plain")).toEqual([]);
  expect(await keptAtCells(opened, "Renamed")).toEqual([]);
});
