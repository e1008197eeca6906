import { HostRefusal, type Selection, type Stop } from "../host";
import { inExcel, tellsSpills } from "./batch";
import { firstCell, rangeAt } from "./cells";

/** What is selected; undefined where that is no cells. */
export function readSelection(): Promise<Selection | undefined> {
  return inExcel(async (context) => {
    const cell = context.workbook.getActiveCell();
    cell.load("address,formulas,values");
    const range = context.workbook.getSelectedRange();
    range.load("address");
    const parent = tellsSpills() ? cell.getSpillParentOrNullObject() : undefined;
    parent?.load("address,formulas,values");
    try {
      await context.sync();
      return { address: range.address, cell: { ...firstCell(cell), ...spilledFrom(cell, parent) } };
    } catch (problem) {
      if ((problem as { code?: string }).code === "InvalidSelection") return undefined;
      throw problem;
    }
  });
}

function spilledFrom(cell: Excel.Range, parent: Excel.Range | undefined) {
  if (parent === undefined || parent.isNullObject || parent.address === cell.address) return {};
  return { spilledFrom: firstCell(parent) };
}

export function select(address: string): Promise<void> {
  return inExcel(async (context) => {
    const range = rangeAt(context, address);
    range.worksheet.activate();
    range.select();
    await context.sync();
  });
}

/**
 * Tells of every new selection and of new content in the selected cell. Events may come by the hundred
 * while a workbook computes, so that one reading is under way at a time and another follows if need be.
 */
export function watchSelection(listener: (selection: Selection | undefined) => void): Stop {
  let stopped = false;
  let reading = false;
  let again = false;
  let told: string | undefined;

  async function tell(): Promise<void> {
    const selection = await readSelection();
    const now = JSON.stringify(selection ?? null);
    if (stopped || now === told) return;
    told = now;
    listener(selection);
  }

  async function follow(): Promise<void> {
    again = true;
    if (reading) return;
    reading = true;
    while (again && !stopped) {
      again = false;
      await tell().catch(untilNextEvent);
    }
    reading = false;
  }

  const handlers: OfficeExtension.EventHandlerResult<unknown>[] = [];
  const listening = inExcel(async (context) => {
    const { workbook } = context;
    handlers.push(
      workbook.onSelectionChanged.add(follow),
      workbook.worksheets.onChanged.add(follow),
      workbook.worksheets.onCalculated.add(follow),
    );
    await context.sync();
  });
  void listening.then(follow, untilNextEvent);

  return () => {
    stopped = true;
    void listening
      .then(async () => {
        for (const handler of handlers) handler.remove();
        await handlers[0]?.context.sync();
      })
      .catch(untilNextEvent);
  };
}

/** While a cell is being edited, or Excel is busy, there is nothing to tell: the next event will. */
function untilNextEvent(problem: unknown): void {
  if (!(problem instanceof HostRefusal)) throw problem;
}
