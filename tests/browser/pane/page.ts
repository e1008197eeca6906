import type { Observer } from "../../../src/cells/observer";
import { mountPane } from "../../../src/pane";
import { MemorySheet } from "./memory-sheet";

/**
 * The page that the tests of the pane open: the pane beside a sheet of memory, or alone (?alone), in a
 * theme that the host names (?theme=dark) or in the system's.
 */
declare const dosewright: { observe(observer: Observer): void };
declare const functions: ReadonlyMap<string, (...given: unknown[]) => unknown>;

const asked = new URLSearchParams(location.search);
const sheet = new MemorySheet();
const theme = asked.get("theme");
if (theme === "light" || theme === "dark") sheet.theme = theme;
dosewright.observe(sheet.record.remember);

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
  sheet.put(address, formula, shown as number | string);
}

const page = { sheet, compute };
export type TestPage = typeof page;
Object.assign(window, { page });

const place = document.getElementById("pane") as HTMLElement;
await mountPane(place, asked.has("alone") ? undefined : sheet.host);
