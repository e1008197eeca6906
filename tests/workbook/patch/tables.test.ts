import ExcelJS from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";

const names = functionNames([]);

/** Two tables side by side, as another library writes them. */
async function twoTables(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet("Results");
  for (const [name, ref] of [
    ["sheets", "A1"],
    ["strips", "D1"],
  ] as const)
    sheet.addTable({
      name,
      ref,
      headerRow: true,
      columns: [{ name: "Dose", filterButton: true }, { name: "Tensile" }],
      rows: [
        [0, 1.92],
        [3, 2.01],
      ],
    });
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

test("A table that took in a row says so in the file, with its filter; the other stays as it was.", async () => {
  const opened = await readWorkbook(await twoTables(), names);
  const tables = opened.book.tables.map((table) =>
    table.name === "sheets" ? { ...table, area: { ...table.area, rows: 4 } } : table,
  );
  const { bytes } = await patchWorkbook(opened, new Map(), names, { tables });
  const parts = Object.entries(unzipSync(bytes)).filter(([path]) => path.includes("tables/"));
  const texts = parts.map(([, part]) => strFromU8(part));
  const grown = texts.find((text) => text.includes('displayName="sheets"')) ?? "";
  expect(grown.match(/ref="[^"]*"/g)).toEqual(['ref="A1:B4"', 'ref="A1:B4"']);
  expect(texts.find((text) => text.includes('displayName="strips"'))).toContain('ref="D1:E3"');
  expect((await readWorkbook(bytes, names)).book.tables).toEqual(tables);
});
