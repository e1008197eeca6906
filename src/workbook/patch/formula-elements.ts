import { type FunctionNames, shownFormula, storedFormula } from "../formula/stored-form";
import { readXml, type XmlElement } from "../xml";
import { escapeFormula } from "../xml-text";
import { type Replacement, splice } from "./splice";

/** What becomes of a formula: another one in the form that people see, or null where its element goes. */
export type FormulaChange = (formula: string, element: XmlElement) => string | null;

/** Changes formulas that stand in elements of their own: defined names, the formulas of table columns. */
export function changeFormulaElements(
  path: string,
  xml: string,
  elementName: string,
  names: FunctionNames,
  change: FormulaChange,
): string {
  const replacements: Replacement[] = [];
  let open: XmlElement | undefined;
  let text = "";
  readXml(path, xml, {
    open(element) {
      if (element.name !== elementName) return;
      open = element;
      text = "";
    },
    text(run) {
      if (open) text += run;
    },
    close(name, end, innerEnd) {
      if (name !== elementName || !open) return;
      const shown = shownFormula(text, names);
      const changed = change(shown, open);
      const { start, innerStart } = open;
      open = undefined;
      if (changed === null) replacements.push({ start, end, text: "" });
      else if (changed !== shown) {
        const stored = escapeFormula(storedFormula(changed, names));
        replacements.push({ start: innerStart, end: innerEnd, text: stored });
      }
    },
  });
  return replacements.length === 0 ? xml : splice(xml, replacements);
}
