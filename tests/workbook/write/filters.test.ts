/** Filters of a new file, of a sheet and of a table: what is read again is what was written. */
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { parseArea } from "../../../src/workbook/address";
import type { Book } from "../../../src/workbook/book";
import type { Filter } from "../../../src/workbook/filter";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { book, sheet } from "../../engine/sheet";

const names = functionNames([]);
const over = (limit: string, area: string): Filter => ({
  area: parseArea(area),
  columns: [
    {
      column: 1,
      criterion: {
        kind: "conditions",
        all: false,
        conditions: [{ operator: "greaterThan", value: limit }],
      },
    },
  ],
});
const cells = { A1: "Day", B1: "COD", A2: 1, B2: 310, A3: 2, B3: 290, A4: 3, B4: 305 };
const table = { name: "Days", sheet: "Table", columns: ["Day", "COD"], headerRow: true };
const written = book(
  [
    { ...sheet("Daily log", cells), hiddenRows: [2], filter: over("300", "A1:B4") },
    { ...sheet("Table", { ...cells, A5: "All", B5: 905 }), hiddenRows: [1, 3] },
  ],
  {
    tables: [{ ...table, area: parseArea("A1:B5"), totalsRow: true, filter: over("306", "A1:B4") }],
  },
);

let parts: Record<string, Uint8Array>;
let again: Book;

beforeAll(async () => {
  const bytes = await writeWorkbook(written, names);
  parts = unzipSync(bytes);
  again = (await readWorkbook(bytes, names)).book;
});

test("a sheet has its filter, and the rows that it hides are hidden", () => {
  const [first] = again.sheets;
  expect(first?.filter).toEqual(written.sheets[0]?.filter);
  expect(first?.hiddenRows).toEqual([2]);
  expect(strFromU8(parts["xl/workbook.xml"] as Uint8Array)).toContain(
    `<definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">'Daily log'!$A$1:$B$4</definedName>`,
  );
});

test("a table has its own, over its rows without the totals", () => {
  expect(again.tables[0]?.filter).toEqual(written.tables[0]?.filter);
  expect(again.sheets[1]?.hiddenRows).toEqual([1, 3]);
  expect(again.sheets[1]?.filter).toBeUndefined();
});
