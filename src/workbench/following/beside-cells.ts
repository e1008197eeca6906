/** What the sheets hold beside their cells, kept at the cells to which it belongs. */
import type { PlannedSheet } from "../../workbook/layout/planned";
import type { Grid } from "../grid";
import { workbookOf } from "../grid";
import { type ChartNow, followChart, type NameOf } from "./charts";
import { Follower } from "./follower";

export class BesideCells {
  readonly #follower: Follower;
  #charts: ((nameOf: NameOf) => ChartNow)[] = [];

  constructor(private readonly grid: Grid) {
    this.#follower = new Follower(grid);
  }

  /** Sheets of a plan that came into the grid, with the ids that they have there. */
  take(sheets: readonly PlannedSheet[], ids: readonly string[]): void {
    const idOf = (name: string) =>
      ids[sheets.findIndex((sheet) => sheet.name === name)] ?? "no such sheet";
    sheets.forEach(({ charts }, index) => {
      const home = ids[index] as string;
      for (const chart of charts) this.#charts.push(followChart(this.#follower, home, chart, idOf));
    });
  }

  forgetAll(): void {
    this.#follower.forgetAll();
    this.#charts = [];
  }

  chartsOn(sheetId: string): ChartNow[] {
    const workbook = workbookOf(this.grid);
    const nameOf = (id: string) => workbook?.getSheetBySheetId(id)?.getName();
    return this.#charts.map((chart) => chart(nameOf)).filter((chart) => chart.sheetId === sheetId);
  }
}
