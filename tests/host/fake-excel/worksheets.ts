import { parseArea } from "../../../src/workbook/address";
import type { Context, Noted } from "./batch";
import { ClientObject, Collection } from "./client-object";
import { Range } from "./range";
import { type FakeTable, fail } from "./state";
import { Table } from "./table";
import { Handlers } from "./workbook";

export class Worksheets extends ClientObject {
  readonly onChanged: Handlers;
  readonly onCalculated: Handlers;

  constructor(context: Context) {
    super(context, () => [...context.fake.sheets.keys()].map((name) => this.getItem(name)));
    this.onChanged = new Handlers(context, "changed");
    this.onCalculated = new Handlers(context, "calculated");
  }

  get items(): Worksheet[] {
    return this.known("items");
  }

  getItem(name: string): Worksheet {
    return new Worksheet(this.context, name);
  }

  getItemOrNullObject(name: string): Worksheet {
    const sheet = this.getItem(name);
    this.context.later("find sheet", () => {
      sheet.isNullObject = !this.context.fake.sheets.has(name);
    });
    return sheet;
  }

  add(name: string): Worksheet {
    const { fake } = this.context;
    this.context.later(`add sheet ${name}`, () => {
      if (fake.structureProtected) fail("AccessDenied");
      if (fake.sheets.has(name)) fail("ItemAlreadyExists");
      fake.sheets.set(name, new Map());
    });
    return this.getItem(name);
  }
}

export class Worksheet extends ClientObject {
  readonly names: Collection<ClientObject>;
  readonly charts: Noted;
  readonly freezePanes: Noted;
  readonly pageLayout: Noted;

  constructor(
    context: Context,
    readonly sheetName: string,
  ) {
    super(context, (property) => (property === "names" ? this.names : sheetName));
    this.names = new Collection(context, () => []);
    this.charts = context.anything(`${sheetName}.charts`);
    this.freezePanes = context.anything(`${sheetName}.freezePanes`);
    this.pageLayout = context.anything(`${sheetName}.pageLayout`);
  }

  get name(): string {
    return this.known("name");
  }

  set showGridlines(shown: boolean) {
    this.context.anything(this.sheetName).showGridlines = shown;
  }

  readonly tables = {
    add: (range: Range, headers: boolean) => {
      const table: FakeTable = { name: "Table1", ...range.where() };
      this.context.later("add table", () => {
        if (!headers) fail("InvalidArgument");
        this.context.fake.tables.push(table);
      });
      return new Table(this.context, table);
    },
  };

  activate(): void {
    this.context.later(`activate ${this.sheetName}`, () => {
      if (!this.context.fake.sheets.has(this.sheetName)) fail("ItemNotFound");
      this.context.fake.done.push(`activate ${this.sheetName}`);
    });
  }

  delete(): void {
    const { fake } = this.context;
    this.context.later(`delete sheet ${this.sheetName}`, () => fake.sheets.delete(this.sheetName));
  }

  getRange(address?: string): Range {
    const all = { row: 0, column: 0, rows: 1_048_576, columns: 16_384 };
    const area = address === undefined ? all : parseArea(address);
    return new Range(this.context, () => ({ sheet: this.sheetName, area }));
  }

  getRanges(addresses: string): Noted {
    return this.context.anything(`${this.sheetName}!${addresses}`);
  }

  getCell(row: number, column: number): Range {
    return this.getRangeByIndexes(row, column, 1, 1);
  }

  getRangeByIndexes(row: number, column: number, rows: number, columns: number): Range {
    const area = { row, column, rows, columns };
    return new Range(this.context, () => ({ sheet: this.sheetName, area }));
  }
}
