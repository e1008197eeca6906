/** The colours of a file's own theme. */
import type { WorkbookPackage } from "../package/open-package";
import { WorkbookRefusal } from "../workbook-refusal";
import { readShortXml } from "../xml";
import { type Theme, usualTheme } from "./colours";

/**
 * By their numbers. Files list the dark ones first, but 0 is the background and 1 the text, 2 and 3 the others of
 * each, then come the accents (comment ECMA-0071 on DIS 29500); that these are light and dark is from memory.
 */
const slots =
  "lt1 dk1 lt2 dk2 accent1 accent2 accent3 accent4 accent5 accent6 hlink folHlink".split(" ");

/** The usual one where there is none that can be read: no file is worth refusing for it. */
export async function readTheme(file: WorkbookPackage, path: string | undefined): Promise<Theme> {
  if (path === undefined || !file.has(path)) return usualTheme;
  const colours = coloursIn(path, await file.text(path));
  return slots.map((slot, at) => colours.get(slot) ?? (usualTheme[at] as string));
}

function coloursIn(path: string, text: string): ReadonlyMap<string, string> {
  const colours = new Map<string, string>();
  const around: string[] = [];
  try {
    readShortXml(path, text, {
      open({ name, attributes: { val, lastClr } }) {
        const [, elements, scheme, slot = ""] = around;
        around.push(name);
        if (elements !== "themeElements" || scheme !== "clrScheme" || !slots.includes(slot)) return;
        const colour = name === "srgbClr" ? val : name === "sysClr" ? lastClr : undefined;
        if (/^[\da-f]{6}$/i.test(colour ?? "")) colours.set(slot, (colour as string).toLowerCase());
      },
      close() {
        around.pop();
      },
    });
  } catch (problem) {
    if (!(problem instanceof WorkbookRefusal)) throw problem;
    return new Map();
  }
  return colours;
}
