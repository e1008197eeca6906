/** A button of the page with choices below it; each time it opens they are asked for anew. */
import { element } from "./element";

export interface Offer {
  readonly label: string;
  readonly more: string;
  choose(): void;
}

/** Words in place of choices where there are none, or above them. */
export type Offered = string | Offer;

export function dropDown(details: HTMLDetailsElement, offers: () => readonly Offered[]): void {
  openBelow(details, (close) => {
    return element("ul", {}, ...offers().map((one) => itemOf(one, close)));
  });
}

/**
 * What opens below a button of the page, made anew each time, or `again`; Escape and a press beside it close it.
 * Gives what opens it at once, for whoever goes on typing.
 */
export function openBelow(
  details: HTMLDetailsElement,
  content: (close: () => void, again: () => void) => HTMLElement,
): () => void {
  let shown: HTMLElement | undefined;
  const show = () => {
    shown?.remove();
    shown = details.open ? content(close, show) : undefined;
    if (shown) details.append(shown);
  };
  const follow = () => {
    if (details.open !== (shown !== undefined)) show();
  };
  const turn = (open: boolean) => {
    details.open = open;
    follow();
  };
  const close = () => turn(false);
  details.addEventListener("toggle", follow);
  addEventListener("keydown", ({ key }) => {
    if (key !== "Escape" || !details.open) return;
    close();
    details.querySelector("summary")?.focus();
  });
  addEventListener("pointerdown", ({ target }) => {
    if (!details.contains(target as Node)) close();
  });
  return () => turn(true);
}

function itemOf(offered: Offered, close: () => void): HTMLElement {
  if (typeof offered === "string") return element("li", {}, element("p", {}, offered));
  const more = element("span", { className: "more" }, offered.more);
  const button = element("button", { type: "button" }, offered.label, more);
  button.addEventListener("click", () => {
    close();
    offered.choose();
  });
  return element("li", {}, button);
}
