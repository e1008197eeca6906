/** The values of a column to choose from, with a search; a tab stop in all, the arrow keys go through it. */
import { element, labelled } from "../element";
import type { ListedValue } from "./listed-values";

/** More than anybody looks through: the search finds the others. */
const MOST_SHOWN = 500;

export interface ValueList {
  readonly parts: readonly HTMLElement[];
  /** Undefined where all are: that filters nothing. */
  chosen(): readonly ListedValue[] | undefined;
}

export function valueList(
  values: readonly ListedValue[],
  isChosen: (value: ListedValue) => boolean,
): ValueList {
  const chosen = new Set(values.filter(isChosen));
  const search = element("input", { type: "search" });
  const all = element("input", { type: "checkbox" });
  const allWords = element("span");
  const list = element("ul", { className: "values" });
  list.setAttribute("aria-label", "Values");
  const note = element("p", { className: "more", hidden: true });
  let found: readonly ListedValue[] = values;

  const markAll = () => {
    const count = found.filter((value) => chosen.has(value)).length;
    all.checked = count > 0 && count === found.length;
    all.indeterminate = count > 0 && count < found.length;
  };
  const show = () => {
    const wanted = search.value.trim().toLowerCase();
    found = values.filter(({ text }) => (text || BLANK).toLowerCase().includes(wanted));
    const shown = found.slice(0, MOST_SHOWN);
    list.replaceChildren(...shown.map((value, at) => itemOf(value, at === 0)));
    allWords.textContent =
      wanted === "" ? `All ${values.length} values` : `The ${found.length} that were found`;
    note.hidden = found.length > 0 && shown.length === found.length;
    note.textContent =
      found.length === 0
        ? "No value has that in it."
        : `The first ${MOST_SHOWN} are listed: search for the others.`;
    markAll();
  };
  const itemOf = (value: ListedValue, isFirst: boolean) => {
    const box = element("input", { type: "checkbox", checked: chosen.has(value) });
    box.tabIndex = isFirst ? 0 : -1;
    box.addEventListener("change", () => {
      if (box.checked) chosen.add(value);
      else chosen.delete(value);
      markAll();
    });
    const count = element("span", { className: "more" }, String(value.count));
    return element("li", {}, element("label", {}, box, value.text || BLANK, " ", count));
  };
  search.addEventListener("input", show);
  all.addEventListener("change", () => {
    for (const value of found)
      if (all.checked) chosen.add(value);
      else chosen.delete(value);
    show();
  });
  list.addEventListener("keydown", (event) => {
    const boxes = [...list.querySelectorAll("input")];
    const at = boxes.indexOf(event.target as HTMLInputElement);
    const steps: Record<string, number> = {
      ArrowDown: at + 1,
      ArrowUp: at - 1,
      Home: 0,
      End: boxes.length - 1,
    };
    const next = boxes[steps[event.key] ?? -1];
    if (!(event.key in steps)) return;
    event.preventDefault();
    if (!next) return;
    for (const box of boxes) box.tabIndex = box === next ? 0 : -1;
    next.focus();
  });
  show();
  return {
    parts: [
      labelled("Search", search),
      element("label", { className: "all" }, all, allWords),
      list,
      note,
    ],
    chosen: () => {
      const kept = found.filter((value) => chosen.has(value));
      return kept.length === values.length ? undefined : kept;
    },
  };
}

const BLANK = "(blank)";
