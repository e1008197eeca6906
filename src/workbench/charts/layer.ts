/**
 * Charts over the cells of the grid. The grid paints its sheet in up to four panes, of which some stay
 * while others scroll; over each lies one of ours that shows its part of the sheet's charts, moved and
 * enlarged as the grid's own. Nothing of it takes the mouse or the keys.
 */
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import { SheetSkeletonManagerService } from "@univerjs/sheets-ui";
import type { Corner } from "../following/charts";
import { type Grid, workbookOf } from "../grid";

/** The main pane comes first. Some end where the grid's scroll bars are. */
const PANES = [
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN, atRight: true, atBottom: true },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_TOP, atRight: true, atBottom: false },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT, atRight: false, atBottom: true },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT_TOP, atRight: false, atBottom: false },
] as const;
const SCROLL_BAR = 12;

export interface PlacedChart {
  readonly corner: () => Corner;
  readonly width: number;
  readonly height: number;
  readonly element: HTMLElement;
}

type Pane = (typeof PANES)[number] & {
  readonly frame: HTMLElement;
  readonly sheet: HTMLElement;
};

export class ChartLayer {
  readonly element = document.createElement("div");
  readonly #panes: readonly Pane[];
  #charts: readonly PlacedChart[] = [];
  #copies = new Map<Pane, HTMLElement[]>();
  #scene: unknown;

  constructor(private readonly grid: Grid) {
    this.element.className = "chart-layer";
    this.#panes = PANES.map((pane) => {
      const [frame, sheet] = [document.createElement("div"), document.createElement("div")];
      frame.className = "chart-pane";
      frame.append(sheet);
      this.element.append(frame);
      return { ...pane, frame, sheet };
    });
  }

  /** Shows these charts in the stead of those before. */
  show(charts: readonly PlacedChart[]): void {
    const same =
      charts.length === this.#charts.length &&
      charts.every(({ element }, index) => element === this.#charts[index]?.element);
    this.#charts = charts;
    if (!same) this.fill();
    this.join();
    this.place();
  }

  private fill(): void {
    this.#copies.clear();
    for (const pane of this.#panes) {
      // Whoever cannot see the picture hears of it once, whatever panes it reaches into.
      const first = pane.key === SHEET_VIEWPORT_KEY.VIEW_MAIN;
      const elements = this.#charts.map(({ element }) => (first ? element : copyOf(element)));
      this.#copies.set(pane, elements);
      pane.sheet.replaceChildren(...elements);
    }
  }

  /** Lies over what the grid now paints. */
  private join(): void {
    const render = this.render();
    if (!render || render.scene === this.#scene) return;
    this.#scene = render.scene;
    render.engine.getCanvasElement().after(this.element);
    render.scene.afterRender$.subscribe(() => render.scene === this.#scene && this.place());
  }

  private render() {
    const unitId = workbookOf(this.grid)?.getUnitId();
    return unitId ? this.grid.injector.get(IRenderManagerService).getRenderById(unitId) : undefined;
  }

  /** At each of the grid's paintings: whatever moved the sheet, the charts move with it. */
  private place(): void {
    const render = this.render();
    const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
    if (!render || !skeleton) return;
    const { scene } = render;
    const [scaleX = 1, , , scaleY = 1, x = 0, y = 0] = scene.transform.getMatrix();
    for (const pane of this.#panes) {
      const viewport = scene.getViewport(pane.key);
      const { width, height } = viewport ?? {};
      pane.frame.hidden = !viewport?.isActive || !width || !height;
      if (!viewport || !width || !height) continue;
      const { left, top, viewportScrollX, viewportScrollY } = viewport;
      Object.assign(pane.frame.style, {
        left: `${left}px`,
        top: `${top}px`,
        width: `${width - (pane.atRight ? SCROLL_BAR : 0)}px`,
        height: `${height - (pane.atBottom ? SCROLL_BAR : 0)}px`,
      });
      const right = x - left - scaleX * viewportScrollX;
      const down = y - top - scaleY * viewportScrollY;
      pane.sheet.style.transform = `matrix(${scaleX}, 0, 0, ${scaleY}, ${right}, ${down})`;
    }
    this.#charts.forEach(({ corner, width, height }, index) => {
      const { row, column } = corner();
      const { startX, startY } = skeleton.getNoMergeCellWithCoordByIndex(row, column);
      for (const elements of this.#copies.values())
        Object.assign((elements[index] as HTMLElement).style, {
          left: `${startX}px`,
          top: `${startY}px`,
          width: `${width}px`,
          height: `${height}px`,
        });
    });
  }
}

function copyOf(element: HTMLElement): HTMLElement {
  const copy = element.cloneNode(true) as HTMLElement;
  copy.removeAttribute("role");
  copy.removeAttribute("aria-label");
  copy.setAttribute("aria-hidden", "true");
  return copy;
}
