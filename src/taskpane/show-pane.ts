import type { FunctionsMetadata } from "../build/built-functions";
import { NAMESPACE } from "../help/reference";
import type { CallRecord } from "../host/call-record";
import { excelHost } from "../host/excel";
import type { SheetHost } from "../host/host";
import { mountPane } from "../pane";

/** Shows the pane: beside Excel with the record of its calls, without one for itself. */
export async function showPane(record: CallRecord | undefined): Promise<void> {
  const place = document.getElementById("pane") as HTMLElement;
  try {
    await mountPane(place, record === undefined ? undefined : await besideExcel(record));
  } catch (problem) {
    place.textContent = `The pane could not be opened: ${(problem as Error).message} The functions in the sheet work on.`;
    throw problem;
  }
}

async function besideExcel(record: CallRecord): Promise<SheetHost> {
  const { namespace = NAMESPACE } = document.documentElement.dataset;
  const metadata = (await (await fetch("functions.json")).json()) as FunctionsMetadata;
  const ids = metadata.functions.map(({ id }) => id);
  return excelHost({
    namespace,
    ids,
    record,
    // Reading and patching files is heavy, and asked for seldom.
    makeValuesCopy: async (file) =>
      (await import("../host/values-copy")).valuesCopy(file, ids, namespace),
  });
}
