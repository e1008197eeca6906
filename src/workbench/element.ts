/** An element of the page with what it holds. */
export function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Partial<HTMLElementTagNameMap[Name]> = {},
  ...inner: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const made = document.createElement(name);
  Object.assign(made, properties);
  made.append(...inner);
  return made;
}

export const labelled = (words: string, field: HTMLElement): HTMLLabelElement =>
  element("label", {}, element("span", {}, words), field);
