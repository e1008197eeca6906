import type { Observer } from "../../../src/cells/observer";
import { mountPane } from "../../../src/pane";
import { MemorySheet } from "./memory-sheet";

/** The page that the tests of the pane open: the pane beside a sheet of memory. */
declare const dosewright: { observe(observer: Observer): void };
declare const functions: ReadonlyMap<string, (...given: unknown[]) => unknown>;

export interface Shown {
  /** What the host names; else the system's. */
  readonly theme?: "light" | "dark";
  /** Whether there is no sheet. */
  readonly alone?: boolean;
}

const place = document.getElementById("pane") as HTMLElement;
let takeAway = () => {};

/** The pane from its start, beside a blank sheet, in the stead of what is there. */
async function show({ theme, alone = false }: Shown = {}): Promise<void> {
  takeAway();
  page.sheet = new MemorySheet();
  page.sheet.theme = theme;
  dosewright.observe(page.sheet.record.remember);
  takeAway = await mountPane(place, alone ? undefined : page.sheet.host);
}

/** Computes a cell as a host does, so that its call is kept. */
function compute(address: string, formula: string, id: string, ...given: unknown[]): void {
  const cells = given.map((one) => (one === null || Array.isArray(one) ? one : [[one]]));
  let shown: unknown;
  try {
    const answer = functions.get(id)?.(...cells, { address, functionName: id });
    shown = Array.isArray(answer) ? answer[0][0] : answer;
  } catch (problem) {
    shown = (problem as { code: string }).code;
  }
  page.sheet.put(address, formula, shown as number | string);
}

const page = { sheet: new MemorySheet(), compute, show };
export type TestPage = typeof page;
Object.assign(window, { page });

await show();
