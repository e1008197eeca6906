import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { areaAddress } from "../../../src/workbook/address";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { commentedFile } from "../commented";
import { rawWorkbook } from "../raw-workbook";

const names = functionNames([]);

async function commentsOf(bytes: Uint8Array) {
  const { book } = await readWorkbook(bytes, names);
  return book.sheets.map(({ comments }) =>
    comments?.map(({ area, author, text }) => [areaAddress(area), author, text]),
  );
}

test("comments are read with their authors, of a thread who said what", async () => {
  const [comments] = await commentsOf(commentedFile());
  expect(comments).toHaveLength(3);
  expect(comments).toContainEqual(["B2", "Shift A", "Shift A:\n7 & more, by hand"]);
  expect(comments).toContainEqual(["C3", undefined, "estimated"]);
  expect(comments).toContainEqual(["B4", undefined, "Lab: Is this dry?\nShift B: Yes."]);
});

test("those of another library are, and a sheet without any has none", async () => {
  const workbook = new ExcelJS.Workbook();
  workbook.addWorksheet("Lots").getCell("C7").note = "from the lab";
  workbook.addWorksheet("Plain").getCell("A1").value = 1;
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  const [lots, plain] = await commentsOf(bytes);
  expect(lots?.map(([cell, , text]) => [cell, text])).toEqual([["C7", "from the lab"]]);
  expect(plain).toBeUndefined();
});

test("one at no cell is left out", async () => {
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const bytes = rawWorkbook({
    sheets: { S: "<sheetData/>" },
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="rId1" Type="${office}/comments" Target="../comments1.xml"/></Relationships>`,
      "xl/comments1.xml":
        '<comments><commentList><comment ref="AAAA1"><text><t>lost</t></text></comment><comment ref="A1"><text><t>kept</t></text></comment></commentList></comments>',
    },
  });
  expect(await commentsOf(bytes)).toEqual([[["A1", undefined, "kept"]]]);
});
