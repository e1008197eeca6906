import type { Limits } from "../package/limits";
import type { WorkbookPackage } from "../package/open-package";
import { WorkbookRefusal } from "../workbook-refusal";
import { xmlReader } from "../xml";
import { unescapeText } from "../xml-text";

/** The texts that cells share. Of rich text the runs are joined; the reading aid of Asian texts is left out. */
export async function readStrings(
  file: WorkbookPackage,
  path: string | undefined,
  { cells }: Limits,
): Promise<readonly string[]> {
  if (path === undefined || !file.has(path)) return [];
  const strings: string[] = [];
  let current = "";
  let inText = false;
  let inAid = false;
  const reader = xmlReader(path, {
    open({ name }) {
      if (name === "si") current = "";
      else if (name === "rPh") inAid = true;
      else if (name === "t") inText = !inAid;
    },
    close(name) {
      if (name === "si") {
        if (strings.push(unescapeText(current)) > cells)
          throw new WorkbookRefusal(
            `The file shares more than ${cells.toLocaleString("en")} texts, which is the most that is read.`,
          );
      } else if (name === "rPh") inAid = false;
      else if (name === "t") inText = false;
    },
    text(run) {
      if (inText) current += run;
    },
  });
  await file.stream(path, (chunk) => reader.write(chunk));
  reader.close();
  return strings;
}
