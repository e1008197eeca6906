/** Pictures of the charts of the sheet that is shown, drawn when the numbers have been computed. */
import { ICommandService } from "@univerjs/core";
import { SetWorksheetActiveOperation } from "@univerjs/sheets";
import type { Desk } from "../desk";
import type { ChartNow } from "../following/charts";
import type { Computed } from "../grid/computed";
import { type Grid, workbookOf } from "../grid/grid";
import { drawChart, noteOf } from "./draw";
import { cellsOfGrid } from "./grid-cells";
import { ChartLayer, type PlacedChart } from "./layer";
import { fileColours, fills } from "./look";
import { type ChartPicture, pictureOf } from "./picture";
import "./charts.css";

export function showCharts(grid: Grid, desk: Desk, computed: Computed): void {
  const layer = new ChartLayer(grid);
  for (const [name, value] of Object.entries(fileColours))
    layer.element.style.setProperty(name, value);
  layer.element.append(fills());
  const drawn = new Drawn();
  const draw = () => {
    const sheetId = workbookOf(grid)?.getActiveSheet()?.getSheetId();
    const cells = cellsOfGrid(grid);
    const charts = sheetId === undefined ? [] : desk.beside.chartsOn(sheetId);
    layer.show(drawn.all(charts.map((now) => ({ now, picture: pictureOf(now.chart, cells) }))));
  };
  computed.watch(draw);
  grid.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) draw();
  });
  draw();
}

interface Drawing {
  readonly now: ChartNow;
  readonly picture: ChartPicture;
}

/** Draws anew only what has changed. */
class Drawn {
  #known = new Map<string, HTMLElement>();

  all(drawings: readonly Drawing[]): PlacedChart[] {
    const before = this.#known;
    this.#known = new Map();
    return drawings.map((drawing, index) => {
      const { corner, chart, lost } = drawing.now;
      const { width, height } = chart;
      const key = JSON.stringify([index, width, height, drawing.picture, lost]);
      const element = before.get(key) ?? elementOf(drawing);
      this.#known.set(key, element);
      return { corner, width, height, element };
    });
  }
}

function elementOf({ now: { chart, lost }, picture }: Drawing): HTMLElement {
  const element = drawChart(picture, chart.width, chart.height, lost);
  element.className = "chart";
  // The words of the whole are enough; names of its marks would only be read beside them.
  for (const mark of element.querySelectorAll("[aria-label]")) mark.removeAttribute("aria-label");
  element.setAttribute("role", "img");
  element.setAttribute("aria-label", [chart.alt, noteOf(picture, lost)].filter(Boolean).join(" "));
  return element;
}
