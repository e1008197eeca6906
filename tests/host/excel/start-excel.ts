import { afterEach, vi } from "vitest";
import { CallRecord } from "../../../src/host/call-record";
import { type ExcelChoices, excelHost } from "../../../src/host/excel";
import { type FakeOffice, FakeWorkbook, fakeExcel, fakeOffice } from "../fake-excel";

afterEach(() => vi.unstubAllGlobals());

/** The host over a workbook in memory. */
export function startExcel(office: FakeOffice = {}, choices: Partial<ExcelChoices> = {}) {
  const fake = new FakeWorkbook();
  const theOffice = fakeOffice(office);
  vi.stubGlobal("Excel", fakeExcel(fake));
  vi.stubGlobal("Office", theOffice);
  const record = new CallRecord();
  const host = excelHost({
    namespace: "WETEND",
    ids: ["DOSE.PUMP", "DOSE.TARGET"],
    record,
    makeValuesCopy: async (file) => file,
    ...choices,
  });
  return { fake, host, record, office: theOffice };
}

/** Lets what was started without being waited for come to its end. */
export const settled = () => new Promise((resolve) => setTimeout(resolve, 5));
