import { FakeWorkbook, fakeExcel, fakeOffice } from "../../host/fake-excel";
import { ERROR_CODES, HostError } from "../../host/host-error";

/**
 * Stands in a page where office.js stands beside Excel: a workbook in memory, and functions that are called
 * as Excel calls them once a test asks for it.
 */
declare global {
  interface Window {
    /** The workbook's file in base64, set before the page loads. */
    workbookFile: string;
    fake: FakeWorkbook;
    /** Enters a formula and calls its function with these cells. */
    enter(address: string, formula: string, id: string, given: readonly unknown[]): Promise<void>;
  }
}

const functions = new Map<string, (...given: unknown[]) => unknown>();
const fake = new FakeWorkbook();
const file = Uint8Array.from(atob(window.workbookFile), (letter) => letter.charCodeAt(0));

async function enter(address: string, formula: string, id: string, given: readonly unknown[]) {
  const body = functions.get(id) as (...given: unknown[]) => unknown[][];
  let value: string | number | boolean;
  try {
    value = body(...given, { functionName: id, address })[0]?.[0] as number;
  } catch (problem) {
    value = (problem as HostError).code;
  }
  fake.put(address, { formula, value });
  fake.selection = address;
  await fake.tell("selection");
}

Object.assign(window, {
  fake,
  enter,
  CustomFunctions: {
    associate: (id: string, body: (...given: unknown[]) => unknown) => functions.set(id, body),
    Error: HostError,
    ErrorCode: ERROR_CODES,
  },
  Excel: fakeExcel(fake),
  Office: {
    ...fakeOffice({ file }),
    HostType: { Excel: "Excel" },
    onReady: async (ready: (info: { host: string }) => unknown) => ready({ host: "Excel" }),
  },
});
