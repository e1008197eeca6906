import type { Observer } from "../cells/observer";
import { CallRecord } from "../host/call-record";

/** What the script of the functions, loaded before this one, offers beside them. */
declare const dosewright: { observe(observer: Observer | undefined): void };

/**
 * The one page of the shared runtime. The functions are registered by now; from here on every call is
 * kept, so that a cell can be explained when the pane opens. The pane itself comes after all this, so that
 * no workbook waits for it.
 */
const record = new CallRecord();
dosewright.observe(record.remember);

Office.onReady(async ({ host }) => {
  const { showPane } = await import("./show-pane");
  await showPane(host === Office.HostType.Excel ? record : undefined);
});
