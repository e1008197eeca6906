/** A list to choose from, by mouse or by keys: arrows, Home, End, first letters; Enter chooses, Escape leaves. */
export interface ListBox {
  readonly label: string;
  readonly options: readonly string[];
  /** -1 where none is. */
  readonly selected: number;
  choose(index: number): void;
  close(): void;
}

/** Letters typed faster than this are the beginning of one word. */
const ONE_WORD = 700;

let lists = 0;

export function listBox({ label, options, selected, choose, close }: ListBox): HTMLElement {
  const list = document.createElement("ul");
  const id = `choices-${lists++}`;
  list.className = "choices";
  list.tabIndex = 0;
  list.setAttribute("role", "listbox");
  list.setAttribute("aria-label", label);
  const items = options.map((option, index) => {
    const item = document.createElement("li");
    item.className = "choice";
    item.id = `${id}-${index}`;
    item.setAttribute("role", "option");
    item.setAttribute("aria-selected", String(index === selected));
    item.textContent = option;
    item.addEventListener("click", () => choose(index));
    item.addEventListener("pointermove", () => move(index));
    return item;
  });
  list.append(...items);

  let active = -1;
  function move(index: number): void {
    if (index < 0 || index >= items.length || index === active) return;
    items[active]?.classList.remove("active");
    active = index;
    const item = items[index] as HTMLElement;
    item.classList.add("active");
    item.scrollIntoView({ block: "nearest" });
    list.setAttribute("aria-activedescendant", item.id);
  }

  let word = "";
  let lastLetter = 0;
  function moveTo(letter: string, now: number): void {
    word = (now - lastLetter < ONE_WORD ? word : "") + letter.toLowerCase();
    lastLetter = now;
    const from = word.length > 1 ? active : active + 1;
    const found = options
      .map((_, index) => (Math.max(from, 0) + index) % options.length)
      .find((index) => options[index]?.toLowerCase().startsWith(word));
    if (found !== undefined) move(found);
  }

  const keys = new Map<string, () => void>([
    ["ArrowDown", () => move(active + 1)],
    ["ArrowUp", () => move(active - 1)],
    ["Home", () => move(0)],
    ["End", () => move(items.length - 1)],
    ["Enter", () => (active < 0 ? close() : choose(active))],
    ["Escape", close],
    ["Tab", close],
  ]);
  list.addEventListener("keydown", (event) => {
    const act = keys.get(event.key);
    event.stopPropagation();
    if (act || event.key.length === 1) event.preventDefault();
    if (act) act();
    else if (event.key.length === 1) moveTo(event.key, event.timeStamp);
  });
  move(Math.max(0, selected));
  return list;
}
