import type { Observer } from "../cells/observer";
import { CallRecord } from "../host/call-record";

/** What the script of the functions, loaded before this one, offers beside them. */
declare const dosewright: { observe(observer: Observer | undefined): void };

/**
 * The one page of the shared runtime. The functions are registered by now; from here on every call is
 * kept, so that a cell can be explained when the pane opens.
 */
const record = new CallRecord();
dosewright.observe(record.remember);
