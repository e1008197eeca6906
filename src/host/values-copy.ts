import { VERSION } from "../library/version";
import { functionNames } from "../workbook/formula/stored-form";
import { readWorkbook } from "../workbook/read/read-workbook";
import { valuesOnly } from "../workbook/values-only";

/** The copy for a colleague without the add-in, from the file as Excel has computed it. */
export async function valuesCopy(
  file: Uint8Array,
  ids: readonly string[],
  namespace: string,
): Promise<Uint8Array> {
  const names = functionNames(ids, namespace);
  const opened = await readWorkbook(file, names);
  return (await valuesOnly(opened, opened.book, names, VERSION)).bytes;
}
