/**
 * Charts over the cells of the grid. The grid paints its sheet in up to four panes, of which some stay
 * while others scroll; over each lies one of ours, moved and enlarged as the grid's own. A chart lies whole
 * in the pane of its first cell: it passes beneath what is frozen, or stays with it and covers what scrolls.
 * Nothing of it takes the mouse or the keys.
 */
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import { SheetSkeletonManagerService } from "@univerjs/sheets-ui";
import type { Corner } from "../following/charts";
import { type Grid, workbookOf } from "../grid/grid";

/** What stays lies over what scrolls. */
const PANES = [
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN, top: false, left: false },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_TOP, top: true, left: false },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT, top: false, left: true },
  { key: SHEET_VIEWPORT_KEY.VIEW_MAIN_LEFT_TOP, top: true, left: true },
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
    if (!same) for (const { sheet } of this.#panes) sheet.replaceChildren();
    this.join();
    this.place();
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
    const main = scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
    if (!main) return;
    const right = main.left + (main.width ?? 0) - SCROLL_BAR;
    const bottom = main.top + (main.height ?? 0) - SCROLL_BAR;
    for (const { key, frame, sheet } of this.#panes) {
      const viewport = scene.getViewport(key);
      frame.hidden = !viewport?.isActive || !viewport.width || !viewport.height;
      if (!viewport || frame.hidden) continue;
      const { left, top, viewportScrollX, viewportScrollY } = viewport;
      Object.assign(frame.style, {
        left: `${left}px`,
        top: `${top}px`,
        width: `${right - left}px`,
        height: `${bottom - top}px`,
      });
      const across = x - left - scaleX * viewportScrollX;
      const down = y - top - scaleY * viewportScrollY;
      sheet.style.transform = `matrix(${scaleX}, 0, 0, ${scaleY}, ${across}, ${down})`;
    }
    const { startRow, startColumn } = skeleton.worksheet.getFreeze();
    for (const { corner, width, height, element } of this.#charts) {
      const { row, column } = corner();
      const [stays, hangs] = [column < startColumn, row < startRow];
      const pane = this.#panes.find(({ left, top }) => left === stays && top === hangs);
      if (element.parentElement !== pane?.sheet) pane?.sheet.append(element);
      const { startX, startY } = skeleton.getNoMergeCellWithCoordByIndex(row, column);
      const [endX, endY] = [(right - x) / scaleX, (bottom - y) / scaleY];
      const left = stays ? pulled(startX, width, endX, main.viewportScrollX) : startX;
      const top = hangs ? pulled(startY, height, endY, main.viewportScrollY) : startY;
      Object.assign(element.style, {
        left: `${left}px`,
        top: `${top}px`,
        width: `${width}px`,
        height: `${height}px`,
      });
    }
  }
}

/** Where a chart begins that stays: one that goes beyond what is seen is scrolled as far as its end. */
const pulled = (start: number, length: number, end: number, scrolled: number) =>
  start - Math.min(scrolled, Math.max(0, start + length - end));
