/** Names and keys for the grid's own controls that it leaves without: for screen readers, voice control and keyboard. */
type Attributes = Readonly<Record<string, string | null | ((element: Element) => string)>>;

/** What is clicked in the list of names; the grid lists them without a list, and out of reach of the keyboard. */
const NAMES = '[data-slot="popover-content"]:has(li)';
const OPENS_NAMES = '[data-u-comp="defined-name"] [data-slot="popover-trigger"]';
const CLICKED = `${NAMES} :is(li, div.univer-cursor-pointer)`;

const named: readonly (readonly [selector: string, attributes: Attributes])[] = [
  ['[data-u-comp="defined-name"] input', { "aria-label": "Cell or name to go to" }],
  [OPENS_NAMES, { role: "button", "aria-label": "Names in this workbook", tabindex: "0" }],
  [NAMES, { "aria-label": "Names in this workbook" }],
  [CLICKED, { role: "button", tabindex: "0" }],
  // The panel of all names: it is made wider and narrower by keys, and scrolls.
  [
    '[role="separator"][aria-label="Resize sidebar"]',
    { "aria-valuenow": (bar) => String(Math.round(bar.parentElement?.clientWidth ?? 0)) },
  ],
  [
    '[data-u-comp="defined-name-container"] > .univer-overflow-y-auto',
    { role: "group", "aria-label": "All names", tabindex: "0" },
  ],
  ["button:has(> svg.univerjs-icon-close-icon):not([aria-label])", { "aria-label": "Close" }],
  ["button:has(> svg.univerjs-icon-increase-icon:only-child)", { "aria-label": "Add a sheet" }],
  ["button:has(> svg.univerjs-icon-convert-icon)", { "aria-label": "All sheets" }],
  ["button:has(> svg.univerjs-icon-more-icon)", { "aria-label": "Later sheets" }],
  [
    "button:has(> svg.univerjs-icon-more-icon.univer-rotate-180)",
    { "aria-label": "Earlier sheets" },
  ],
  [
    'div[data-slot="dropdown-menu-trigger"]',
    { "aria-haspopup": null, "aria-expanded": null, type: null },
  ],
  // A positive place in the tab order would put the grid before the header.
  ['canvas[tabindex="1"]', { tabindex: "0" }],
];

export function nameControls(container: HTMLElement): void {
  let opened = false;
  const name = () => {
    for (const [selector, attributes] of named)
      for (const element of container.querySelectorAll(selector))
        for (const [attribute, given] of Object.entries(attributes)) {
          const value = typeof given === "function" ? given(element) : given;
          if (value === null) element.removeAttribute(attribute);
          else if (element.getAttribute(attribute) !== value)
            element.setAttribute(attribute, value);
        }
    const first = opened && container.querySelector<HTMLElement>(CLICKED);
    if (!first) return;
    opened = false;
    first.focus();
  };
  name();
  // A list that opens says so on the control before it.
  const attributeFilter = ["aria-expanded"];
  new MutationObserver(name).observe(container, {
    childList: true,
    subtree: true,
    attributeFilter,
  });
  container.addEventListener("keydown", (event) => {
    const element = event.target as HTMLElement;
    const opens = element.matches(OPENS_NAMES);
    if (!(opens || element.matches(CLICKED)) || !/^(Enter| )$/.test(event.key)) return;
    event.preventDefault();
    opened = opens;
    element.click();
  });
}
