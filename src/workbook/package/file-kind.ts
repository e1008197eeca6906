import { WorkbookRefusal } from "../workbook-refusal";
import type { Limits } from "./limits";

const startsWith = (bytes: Uint8Array, ...start: number[]) =>
  start.every((byte, at) => bytes[at] === byte);

/** "EncryptedPackage" as the directory of a compound file holds it, two bytes a letter. */
const encryptedPackage = new TextEncoder()
  .encode([..."EncryptedPackage"].join("\0"))
  .subarray(0, -1);

/** Looks for the name where such files keep their directory: among the first megabyte or the last. */
function holdsEncryptedPackage(bytes: Uint8Array): boolean {
  const text = new TextDecoder("latin1");
  const wanted = text.decode(encryptedPackage);
  const megabyte = 2 ** 20;
  return (
    text.decode(bytes.subarray(0, megabyte)).includes(wanted) ||
    text.decode(bytes.subarray(-megabyte)).includes(wanted)
  );
}

/** Tells a zip archive from the other files that people hand over, and refuses those by name. */
export function refuseOtherFiles(bytes: Uint8Array, limits: Limits): void {
  if (bytes.length === 0) throw new WorkbookRefusal("The file is empty.");
  if (bytes.length > limits.fileBytes)
    throw new WorkbookRefusal(
      `The file is larger than ${Math.round(limits.fileBytes / 2 ** 20)} MB, which is the most that is read.`,
    );
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1))
    throw new WorkbookRefusal(
      holdsEncryptedPackage(bytes)
        ? "The file is encrypted: save a copy without a password first."
        : "The file is in an old binary format: save it as .xlsx first.",
    );
  if (startsWith(bytes, 0x50, 0x4b)) return;
  throw new WorkbookRefusal(
    bytes.subarray(0, 4096).includes(0)
      ? "The file is not a workbook: it is no .xlsx or .xlsm file."
      : "The file is plain text, not a workbook: open it in a spreadsheet program and save it as .xlsx first.",
  );
}
