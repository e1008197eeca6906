/** What stands in a cell is left alone, whichever sheet it is: how that is said. */
import { HostRefusal, type SheetCell } from "./host";

const LONGEST_SHOWN = 60;

/** Refuses a cell that holds something, unless it is what the person saw when agreeing to replace it. */
export function refuseFilled({ address, formula, value }: SheetCell, agreed?: SheetCell): void {
  if (formula === "" && value === null) return;
  if (agreed !== undefined && agreed.formula === formula && agreed.value === value) return;
  const holds = formula === "" ? String(value) : formula;
  const shown = holds.length > LONGEST_SHOWN ? `${holds.slice(0, LONGEST_SHOWN - 1)}…` : holds;
  throw new HostRefusal(
    "occupied",
    `${address} is not blank: it holds ${shown}. Select blank cells and try again.`,
  );
}

/** Refuses cells of which a sheet table holds some. */
export function refuseTable(address: string, table: string): never {
  throw new HostRefusal(
    "occupied",
    `${address} reaches into the table ${table}. Select a cell beside it and try again.`,
  );
}
