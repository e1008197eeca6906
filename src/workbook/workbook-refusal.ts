/**
 * Why a file is not read or not written: one sentence for the person who gave it. Whatever is wrong
 * with a file ends in this error and in no other.
 */
export class WorkbookRefusal extends Error {
  override readonly name = "WorkbookRefusal";
}
