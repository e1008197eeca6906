/** Names for the grid's own controls that it leaves without: for screen readers and for voice control. */
type Attributes = Readonly<Record<string, string | null>>;

const named: readonly (readonly [selector: string, attributes: Attributes])[] = [
  ['[data-u-comp="defined-name"] input', { "aria-label": "Cell or name to go to" }],
  [
    '[data-u-comp="defined-name"] [data-slot="popover-trigger"]',
    { role: "button", "aria-label": "Names in this workbook" },
  ],
  ["button:has(> svg.univerjs-icon-close-icon):not([aria-label])", { "aria-label": "Close" }],
  ["button:has(> svg.univerjs-icon-increase-icon)", { "aria-label": "Add a sheet" }],
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
  const name = () => {
    for (const [selector, attributes] of named)
      for (const element of container.querySelectorAll(selector))
        for (const [attribute, value] of Object.entries(attributes))
          if (value === null) element.removeAttribute(attribute);
          else if (element.getAttribute(attribute) !== value)
            element.setAttribute(attribute, value);
  };
  name();
  new MutationObserver(name).observe(container, { childList: true, subtree: true });
}
