import { FakeWorkbook, fakeOffice } from "../../host/fake-excel";
import { type Batch, BehindLibrary, type FunctionResult } from "./behind-library";

/**
 * Stands in the page between Excel's own library and our functions: what the library sends to Excel is
 * carried out on a workbook in memory. Only what needs a window of Excel around the page is replaced: when
 * it is ready, what it supports, its start, its file.
 */
declare global {
  interface Window {
    /** The workbook's file in base64, set before the page loads. */
    workbookFile: string;
    /** Set before the page loads, too. */
    _richApiNativeBridge: NativeBridge;
    fake: FakeWorkbook;
    behind: BehindLibrary;
    /** Calls functions as Excel does. */
    callFunctions(calls: readonly FunctionCall[]): Promise<FunctionResult[]>;
    /** Enters a formula whose function is called with these cells, and selects its cell. */
    enter(address: string, formula: string, id: string, given: readonly unknown[]): Promise<void>;
  }
}

export interface FunctionCall {
  readonly id: string;
  readonly given: readonly unknown[];
  readonly address?: string;
}

export interface NativeBridge {
  /** What the library sent before our functions were there. */
  readonly waiting: readonly string[];
  /** The library's own. */
  onMessageFromHost(text: string): void;
  sendMessageToHost(text: string): unknown;
}

interface Message {
  readonly id: number;
  readonly type: number;
  readonly message?: { readonly body?: Batch };
}

const fake = new FakeWorkbook();
/** By the number of the call. */
const results = new Map<number, FunctionResult>();
const behind = new BehindLibrary(fake, (answered) => {
  for (const result of answered) results.set(result[0], result);
});
const file = Uint8Array.from(atob(window.workbookFile), (letter) => letter.charCodeAt(0));
const { addin, context } = fakeOffice({
  file,
  sets: ["SharedRuntime", "CompressedFile", "CustomFunctions"],
});

const bridge = window._richApiNativeBridge;

async function answer(text: string): Promise<void> {
  const { id, type, message } = JSON.parse(text) as Message;
  if (type !== 1) return;
  const body = await behind.answer(message?.body as Batch);
  const answered = { statusCode: 200, headers: {}, body: JSON.stringify(body) };
  bridge.onMessageFromHost(JSON.stringify({ id, type: 2, message: answered }));
}

/** What went wrong in the page: a call that it swallowed would be waited for without end. */
const faults: unknown[] = [];
addEventListener("error", ({ error }) => faults.push(error));
addEventListener("unhandledrejection", ({ reason }) => faults.push(reason));

const wait = () => new Promise((resolve) => setTimeout(resolve, 10));

/** The first that waits is our page; later ones are parts of the library, which go their own way. */
const libraryReady = Office.onReady;
let first = true;

async function ready(tell: (info: { host: string }) => unknown): Promise<void> {
  while (!("Excel" in window && "Error" in CustomFunctions)) await wait();
  for (const [name, value] of Object.entries(context)) {
    Object.defineProperty(Office.context, name, { value });
  }
  Object.assign(Office.addin, addin);
  await tell({ host: "Excel" });
}

/** What Excel sends: events and calls of functions, each as category, kind, target and text. */
function send(entries: readonly (readonly unknown[])[]): void {
  bridge.onMessageFromHost(JSON.stringify({ type: 3, message: { entries } }));
}

const FUNCTION = [1, 1000] as const;
const CALCULATED = [65_536, 16] as const;
const ERRORS_ALLOWED = 4;

/** Far more than any call takes. */
const PATIENCE = 60_000;
let calledSoFar = 0;

async function callFunctions(calls: readonly FunctionCall[]): Promise<FunctionResult[]> {
  const numbered = calls.map((call) => ({ ...call, number: calledSoFar++ }));
  send(
    numbered.map(({ number, id, given, address = "Sheet1!A1" }) => [
      ...FUNCTION,
      "",
      JSON.stringify([number, id, given, address, ERRORS_ALLOWED]),
    ]),
  );
  const began = performance.now();
  while (numbered.some(({ number }) => !results.has(number))) {
    if (performance.now() - began > PATIENCE)
      throw new Error(`No answer to ${calls[0]?.id}. ${faults.map(String)} ${behind.asked}`);
    await wait();
  }
  return numbered.map(({ number }) => results.get(number) as FunctionResult);
}

async function enter(address: string, formula: string, id: string, given: readonly unknown[]) {
  const [[, sound, value] = []] = await callFunctions([{ id, given, address }]);
  fake.put(address, { formula, value: sound ? ((value as number[][])[0]?.[0] ?? "") : "#VALUE!" });
  fake.selection = address;
  send([[...CALCULATED, "Workbook", JSON.stringify({ address, worksheetId: "1" })]]);
}

Object.assign(window, { fake, behind, callFunctions, enter });
bridge.sendMessageToHost = answer;
for (const text of bridge.waiting) void answer(text);
Object.assign(Office, {
  HostType: { Excel: "Excel" },
  onReady: (tell: Parameters<typeof ready>[0]) => {
    if (!first) return libraryReady(tell as never);
    first = false;
    return ready(tell);
  },
});
