import type { Context } from "./batch";
import { ClientObject } from "./client-object";
import { Range } from "./range";
import type { FakeTable } from "./state";

export class Table extends ClientObject {
  constructor(
    context: Context,
    private readonly table: FakeTable,
  ) {
    super(context, (property) => (property === "showHeaders" ? true : table.name));
  }

  get name(): string {
    return this.known("name");
  }
  set name(name: string) {
    this.context.later("name table", () => {
      this.table.name = name;
    });
  }
  get showHeaders(): boolean {
    return this.known("showHeaders");
  }
  set style(style: string) {
    this.context.anything(`table ${this.table.name}`).style = style;
  }
  set showBandedRows(banded: boolean) {
    this.context.anything(`table ${this.table.name}`).showBandedRows = banded;
  }

  getRange(): Range {
    return new Range(this.context, () => this.table);
  }
  getHeaderRowRange(): Range {
    return new Range(this.context, () => ({
      ...this.table,
      area: { ...this.table.area, rows: 1 },
    }));
  }
  getDataBodyRange(): Range {
    const { area } = this.table;
    const body = { ...area, row: area.row + 1, rows: area.rows - 1 };
    return new Range(this.context, () => ({ ...this.table, area: body }));
  }
}
