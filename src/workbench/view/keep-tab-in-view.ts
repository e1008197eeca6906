/** The tab of the sheet that is shown stays in view: the grid's strip loses it when it becomes narrower. */
const STRIP = "[data-u-comp=slide-tab-bar]";

export function keepTabInView(container: HTMLElement): void {
  const show = () =>
    container
      .querySelector(`${STRIP} [aria-selected=true]`)
      ?.scrollIntoView({ block: "nearest", inline: "nearest" });
  // Behind what the grid itself does then.
  const showSoon = () => requestAnimationFrame(() => requestAnimationFrame(show));
  const sizes = new ResizeObserver(showSoon);
  let watched: Element | null = null;
  const follow = () => {
    const strip = container.querySelector(STRIP);
    if (strip !== watched) {
      sizes.disconnect();
      if (strip) sizes.observe(strip);
      watched = strip;
    }
    showSoon();
  };
  follow();
  new MutationObserver((changes) => {
    const inStrip = ({ target, type }: MutationRecord) =>
      type === "childList" ? !watched?.isConnected : watched?.contains(target);
    if (changes.some(inStrip)) follow();
  }).observe(container, { subtree: true, childList: true, attributeFilter: ["aria-selected"] });
}
