/** The place of the pane: beside the grid, or in its stead where the window is narrow. */

/** From this width on there is room for both, and the pane is open from the start. */
const ROOMY = "(min-width: 1100px)";
/** As in page.css. */
const NARROW = "(max-width: 720px)";

export class PanePlace {
  #filled = false;
  #ready = false;

  constructor(
    private readonly place: HTMLElement,
    private readonly button: HTMLButtonElement,
    private readonly fill: () => Promise<void>,
  ) {
    button.addEventListener("click", () => this.show(!this.open));
    this.show(matchMedia(ROOMY).matches);
  }

  /** The workbook is computed: from now on the pane may take the machine's time. */
  ready(): void {
    this.#ready = true;
    this.fillOnce();
  }

  /** Takes the pane away where it covers the grid. */
  showGrid(): void {
    if (matchMedia(NARROW).matches) this.show(false);
  }

  private get open(): boolean {
    return !this.place.hidden;
  }

  private show(open: boolean): void {
    this.place.hidden = !open;
    this.button.setAttribute("aria-expanded", String(open));
    this.fillOnce();
  }

  private fillOnce(): void {
    if (this.#filled || !this.#ready || !this.open) return;
    this.#filled = true;
    this.fill().catch((problem: unknown) => {
      this.#filled = false;
      this.place.textContent = `The pane could not be opened: ${(problem as Error).message} The sheet works on.`;
    });
  }
}
