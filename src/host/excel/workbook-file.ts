import { refusalOf, refuse } from "./batch";

/** Excel hands a file over in slices of up to 4 MB. */
const SLICE = 4_194_304;

/** The workbook as it stands now, as the bytes of an .xlsx file. */
export async function readWorkbookFile(): Promise<Uint8Array> {
  const file = await answered<Office.File>((done) =>
    Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize: SLICE }, done),
  );
  try {
    const bytes = new Uint8Array(file.size);
    let at = 0;
    for (let index = 0; index < file.sliceCount; index += 1) {
      const slice = await answered<Office.Slice>((done) => file.getSliceAsync(index, done));
      bytes.set(slice.data as number[], at);
      at += slice.size;
    }
    return bytes;
  } finally {
    file.closeAsync();
  }
}

/** Opens bytes of an .xlsx file as a new workbook, beside this one. */
export async function openWorkbookFile(bytes: Uint8Array): Promise<void> {
  try {
    await Excel.createWorkbook(base64(bytes));
  } catch (problem) {
    throw refusalOf(problem);
  }
}

function answered<T>(ask: (done: (result: Office.AsyncResult<T>) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    ask(({ status, value, error }) => {
      if (status === Office.AsyncResultStatus.Succeeded) resolve(value);
      else reject(refuse("lost", `Excel did not hand the workbook over: ${error.message}`));
    });
  });
}

/** A chunk a time: a spread over millions of arguments would overflow the stack. */
function base64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 8192) {
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  }
  return btoa(text);
}
