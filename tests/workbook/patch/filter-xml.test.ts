import { describe, expect, test } from "vitest";
import { parseArea } from "../../../src/workbook/address";
import type { Criterion, Filter } from "../../../src/workbook/filter";
import { patchFilter } from "../../../src/workbook/patch/filter-xml";
import { FilterReader } from "../../../src/workbook/read/filter";
import { readXml } from "../../../src/workbook/xml";

function read(xml: string): Filter | undefined {
  const reader = new FilterReader();
  readXml("sheet", xml, {
    open: ({ name, attributes }) => reader.open(name, attributes),
    close: (name) => reader.close(name),
  });
  return reader.filter();
}

const filter = (columns: Record<number, Criterion>, area = "A4:C9"): Filter => ({
  area: parseArea(area),
  columns: Object.entries(columns).map(([column, criterion]) => ({
    column: Number(column),
    criterion,
  })),
});

const sheet = (inner: string) => `<worksheet><sheetData/>${inner}<mergeCells/></worksheet>`;
const patched = (inner: string, now: Filter | undefined) => patchFilter("s", sheet(inner), now);

/** Each kind as a spreadsheet writes it. */
const kinds: readonly (readonly [string, string, Criterion])[] = [
  ["texts", '<filters><filter val="alum"/><filter val="5 %"/></filters>', { kind: "values", texts: ["alum", "5 %"], dates: [], blank: false }],
  ["blanks", '<filters blank="1"></filters>', { kind: "values", texts: [], dates: [], blank: true }],
  ["days and months", '<filters><dateGroupItem year="2025" month="9" day="1" dateTimeGrouping="day"/><dateGroupItem year="2025" month="10" dateTimeGrouping="month"/></filters>', { kind: "values", texts: [], dates: [[2025, 9, 1], [2025, 10]], blank: false }],
  ["two limits", '<customFilters and="1"><customFilter operator="greaterThan" val="5"/><customFilter operator="lessThanOrEqual" val="9"/></customFilters>', { kind: "conditions", all: true, conditions: [{ operator: "greaterThan", value: "5" }, { operator: "lessThanOrEqual", value: "9" }] }],
  ["a part of a text", '<customFilters><customFilter val="*&lt;foam*"/></customFilters>', { kind: "conditions", all: false, conditions: [{ operator: "equal", value: "*<foam*" }] }],
  ["the highest", '<top10 val="10" filterVal="7.1"/>', { kind: "other", xml: '<top10 val="10" filterVal="7.1"/>' }],
]; // biome-ignore format: a kind a line

describe.each(kinds)("a filter by %s", (_, xml, criterion) => {
  const whole = `<autoFilter ref="A4:C9"><filterColumn colId="1">${xml}</filterColumn></autoFilter>`;

  test("is read, and written as it was read", () => {
    expect(read(sheet(whole))).toEqual(filter({ 1: criterion }));
    expect(patched("", filter({ 1: criterion }))).toBe(sheet(whole));
    expect(patched('<autoFilter ref="A4:C9"/>', filter({ 1: criterion }))).toBe(sheet(whole));
  });
});

describe("a filter of a file", () => {
  const blank: Criterion = { kind: "values", texts: [], dates: [], blank: true };
  const colour =
    '<filterColumn colId="0"><colorFilter dxfId="3" cellColor="0"/><extLst/></filterColumn>';
  const button = '<filterColumn colId="2" hiddenButton="1"';
  const order = '<sortState ref="A5:C9"/>';
  const own = `<autoFilter ref="A4:C9">${colour}${button}/>${order}</autoFilter>`;
  const other: Criterion = { kind: "other", xml: "" };

  test("keeps what is not understood, its order and its buttons, where another column changes", () => {
    expect(read(sheet(own))).toEqual(filter({ 0: other }));
    expect(patched(own, filter({ 0: other, 1: blank, 2: blank }, "A4:C12"))).toBe(
      sheet(
        `<autoFilter ref="A4:C12">${colour}<filterColumn colId="1"><filters blank="1"></filters></filterColumn>${button}><filters blank="1"></filters></filterColumn>${order}</autoFilter>`,
      ),
    );
  });

  test("loses the criterion that was cleared, and is gone where the sheet has none", () => {
    expect(patched(own, filter({}))).toBe(
      sheet(`<autoFilter ref="A4:C9">${button}/>${order}</autoFilter>`),
    );
    expect(patched(own, undefined)).toBe(sheet(""));
  });

  test("is that of the sheet, not of a view that somebody stored", () => {
    const view = `<customSheetViews><customSheetView>${own}</customSheetView></customSheetViews>`;
    expect(read(sheet(view))).toBeUndefined();
    expect(read(sheet(`<autoFilter ref="A4:C9"/>${view}`))).toEqual(filter({}));
    expect(patched(view, filter({}))).toBe(sheet(`<autoFilter ref="A4:C9"/>${view}`));
  });

  test("that names no place, or a column beside itself, asks for nothing", () => {
    expect(read(sheet(own.replace("A4:C9", "nowhere")))).toBeUndefined();
    expect(read(sheet(own.replace('colId="0"', 'colId="7"')))).toEqual(filter({}));
  });

  test("has the prefix of its part", () => {
    const prefixed = "<x:worksheet><x:sheetData/></x:worksheet>";
    expect(patchFilter("s", prefixed, filter({ 0: blank }))).toBe(
      '<x:worksheet><x:sheetData/><x:autoFilter ref="A4:C9"><x:filterColumn colId="0"><x:filters blank="1"></x:filters></x:filterColumn></x:autoFilter></x:worksheet>',
    );
  });
});
