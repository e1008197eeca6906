import { placeOf } from "../../../src/host/place";
import { parseArea } from "../../../src/workbook/address";
import type { Context } from "./batch";
import { Collection } from "./client-object";
import { Names } from "./names";
import { Range, type Where } from "./range";
import { fail } from "./state";
import { Table } from "./table";
import { Worksheets } from "./worksheets";

export class Workbook {
  readonly onSelectionChanged: Handlers;
  readonly worksheets: Worksheets;
  readonly names: Names;
  readonly tables: Collection<Table>;

  constructor(readonly context: Context) {
    const { fake } = context;
    this.onSelectionChanged = new Handlers(context, "selection");
    this.worksheets = new Worksheets(context);
    this.names = new Names(context);
    this.tables = new Collection(context, () =>
      fake.tables.map((table) => new Table(context, table)),
    );
  }

  getSelectedRange(): Range {
    return new Range(this.context, () => this.selected());
  }

  getActiveCell(): Range {
    return new Range(this.context, () => {
      const { sheet, area } = this.selected();
      return { sheet, area: { ...area, rows: 1, columns: 1 } };
    });
  }

  private selected(): Where {
    const { selection } = this.context.fake;
    const { sheet, cells } = placeOf(selection ?? fail("InvalidSelection"));
    return { sheet, area: parseArea(cells) };
  }
}

export class Handlers {
  constructor(
    private readonly context: Context,
    private readonly event: string,
  ) {}

  add(listener: () => unknown) {
    const { context, event } = this;
    const all = context.fake.listeners.get(event) ?? new Set();
    context.fake.listeners.set(event, all);
    context.later(`listen to ${event}`, () => all.add(listener));
    const remove = () => context.later(`leave ${event}`, () => all.delete(listener));
    return { context, remove };
  }
}
