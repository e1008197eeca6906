import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { hasLinks } from "../../../src/workbook/read/at-cells";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";

test("links are found on the sheets that have them", async () => {
  const workbook = new ExcelJS.Workbook();
  const lots = workbook.addWorksheet("Lots");
  lots.getCell("A2").value = { text: "order", hyperlink: "https://example.org/" };
  workbook.addWorksheet("Links").getCell("A1").value = { text: "b", hyperlink: "https://example.org/" }; // biome-ignore format: a line
  workbook.addWorksheet("Plain").getCell("A1").value = 1;
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  const opened = await readWorkbook(bytes, functionNames([]));
  expect(await hasLinks(opened, "Lots")).toBe(true);
  expect(await hasLinks(opened, "Links")).toBe(true);
  expect(await hasLinks(opened, "Plain")).toBe(false);
  expect(await hasLinks(opened, "Renamed")).toBe(false);
});
