import { HostRefusal, type HostRefusalKind } from "../host";
import { NO_SUCH_PLACE } from "../place";

/** Whether this Excel has a set of its programming interface. */
export const supports = (version: string): boolean =>
  Office.context.requirements.isSetSupported("ExcelApi", version);

/** Whether Excel tells how far a formula spills, and from which cell a value was spilled. */
export const tellsSpills = (): boolean => supports("1.12");

/** The first version whose batches are one step to undo. */
const UNDO_GROUPS = "1.20";

/**
 * An older copy of the library takes the wish for one step without a word and does nothing about it. One
 * that knows the version knows the other news of it as well.
 */
export const hasUndoGroups = (): boolean =>
  supports(UNDO_GROUPS) && typeof Excel.CustomFunctionManager?.setVisibility === "function";

/** Does a batch of reading and writing; whatever Excel objects to comes out as a refusal. */
export async function inExcel<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await (hasUndoGroups() ? Excel.run({ mergeUndoGroup: true }, batch) : Excel.run(batch));
  } catch (problem) {
    throw refusalOf(problem);
  }
}

const SENTENCES: Readonly<Record<HostRefusalKind, string>> = {
  editing: "A cell is being edited. Press Enter or Esc, then try again.",
  occupied: "Something stands there already. Select blank cells and try again.",
  protected: "The sheet or the workbook is protected. Unprotect it, or choose another sheet.",
  unsupported: "This version of Excel cannot do that. It needs a newer one.",
  "no such place": NO_SUCH_PLACE,
  lost: "Excel does not answer. Save the workbook, then close the pane and open it again.",
};

const KINDS: Readonly<Record<string, HostRefusalKind>> = {
  InvalidOperationInCellEditMode: "editing",
  AccessDenied: "protected",
  ApiNotFound: "unsupported",
  NotImplemented: "unsupported",
  UnsupportedFeature: "unsupported",
  UnsupportedOperation: "unsupported",
  UnsupportedSheet: "unsupported",
  ItemNotFound: "no such place",
  InvalidReference: "no such place",
  InvalidSelection: "no such place",
  MergedRangeConflict: "occupied",
  NonBlankCellOffSheet: "occupied",
  PivotTableRangeConflict: "occupied",
  FilteredRangeConflict: "occupied",
  GeneralException: "lost",
  RequestAborted: "lost",
  InactiveWorkbook: "lost",
  ConnectionFailure: "lost",
  HostRestartNeeded: "lost",
  InvalidObjectPath: "lost",
  InvalidRequestContext: "lost",
};

export const refuse = (kind: HostRefusalKind, message = SENTENCES[kind]): HostRefusal =>
  new HostRefusal(kind, message);

/** The refusal for what Excel answered; a bug of ours stays what it is. */
export function refusalOf(problem: unknown): unknown {
  const code = (problem as { code?: unknown } | null)?.code;
  const kind = typeof code === "string" ? KINDS[code] : undefined;
  return kind === undefined ? problem : refuse(kind);
}
