/**
 * The charts of a workbook that was opened, as plans have them: of the kinds that a plan knows, with cells
 * for what they draw. What is not understood is left out; the file itself keeps all of it.
 */
import type { PlannedChart } from "../../layout/planned";
import { relationshipsOf } from "../../package/relationships";
import { WorkbookRefusal } from "../../workbook-refusal";
import type { OpenedWorkbook } from "../read-workbook";
import { chartIn } from "./chart";
import { standingCharts } from "./drawing";
import { SpilledCells } from "./references";
import { treeOf } from "./tree";

const MOST_CHARTS = 200;

/** The values that a chart keeps a copy of are read from the cells. */
const COPIES = new Set(["numCache", "multiLvlStrCache"]);

/** By sheet, in the order of the sheets. */
export async function readCharts(opened: OpenedWorkbook): Promise<PlannedChart[][]> {
  let left = MOST_CHARTS;
  const bySheet: PlannedChart[][] = [];
  const spilled = new SpilledCells(opened.book);
  for (const [index] of opened.part.sheets.entries()) {
    const charts = left > 0 ? await chartsOf(opened, index, spilled, left) : [];
    left -= charts.length;
    bySheet.push(charts);
  }
  return bySheet;
}

async function chartsOf(
  { file, part, book }: OpenedWorkbook,
  index: number,
  spilled: SpilledCells,
  most: number,
): Promise<PlannedChart[]> {
  const [entry, sheet] = [part.sheets[index], book.sheets[index]];
  if (!entry || !sheet) return [];
  const found: PlannedChart[] = [];
  try {
    for (const drawing of await related(file, entry.path, "drawing")) {
      const tree = treeOf(drawing.path, await file.text(drawing.path), COPIES);
      const charts = await related(file, drawing.path, "chart");
      for (const { relation, ...place } of standingCharts(tree, sheet).slice(0, most)) {
        const path = charts.find(({ id }) => id === relation)?.path;
        const chart = path && chartIn(treeOf(path, await file.text(path), COPIES));
        if (!chart) continue;
        const alt = place.alt || chart.title || "A chart of this workbook";
        const series = chart.series.map((one) => ({
          ...one,
          values: spilled.withSpill(one.values),
          ...(one.x && { x: spilled.withSpill(one.x) }),
        }));
        found.push({ ...place, ...chart, series, alt });
      }
    }
  } catch (problem) {
    // A damaged picture is no reason to refuse the numbers.
    if (!(problem instanceof WorkbookRefusal)) throw problem;
  }
  return found;
}

async function related(file: OpenedWorkbook["file"], path: string, type: string) {
  return (await relationshipsOf(file, path)).flatMap(({ id, path: target, type: its }) =>
    its === type && target !== undefined && file.has(target) ? [{ id, path: target }] : [],
  );
}
