import { addressOf, areaAddress, parseArea, sheetPrefix } from "../../../src/workbook/address";
import type { Area } from "../../../src/workbook/book";
import type { Context, Noted } from "./batch";
import { ClientObject, Collection } from "./client-object";
import { type FakeCell, fail } from "./state";
import { Table } from "./table";
import { Worksheet } from "./worksheets";

export interface Where {
  readonly sheet: string;
  readonly area: Area;
}

export class Range extends ClientObject {
  constructor(
    context: Context,
    readonly where: () => Where,
  ) {
    super(context, (property) => this.readNow(property));
  }

  /** For notes of what was done. */
  get shown(): string {
    const { sheet, area } = this.where();
    return `${sheet}!${areaAddress(area)}`;
  }

  get address(): string {
    return this.known("address");
  }
  get values(): unknown[][] {
    return this.known("values");
  }
  get formulas(): unknown[][] {
    return this.known("formulas");
  }
  get valueTypes(): string[][] {
    return this.known("valueTypes");
  }
  get worksheet(): Worksheet {
    return new Worksheet(this.context, this.where().sheet);
  }
  get format(): Noted {
    return this.context.anything(`${this.shown}.format`);
  }
  get conditionalFormats(): Noted {
    return this.context.anything(`${this.shown}.conditionalFormats`);
  }
  get dataValidation(): Noted {
    return this.context.anything(`${this.shown}.dataValidation`);
  }
  set numberFormat(format: string) {
    this.context.anything(this.shown).numberFormat = format;
  }

  set values(rows: unknown[][]) {
    this.write("values", rows);
  }
  set formulas(rows: unknown[][]) {
    this.write("formulas", rows);
  }

  select(): void {
    this.context.later("select", () => {
      this.context.fake.selection = this.shown;
    });
  }

  merge(): void {
    this.context.later("merge", () => this.context.fake.done.push(`merge ${this.shown}`));
  }

  getCell(row: number, column: number): Range {
    return this.part(({ area }) => ({
      row: area.row + row,
      column: area.column + column,
      rows: 1,
      columns: 1,
    }));
  }

  getResizedRange(rows: number, columns: number): Range {
    return this.part(({ area }) => ({
      ...area,
      rows: area.rows + rows,
      columns: area.columns + columns,
    }));
  }

  getTables(): Collection<Table> {
    const { context } = this;
    return new Collection(context, () => {
      const { sheet, area } = this.where();
      return context.fake.tables
        .filter((table) => table.sheet === sheet && meet(table.area, area))
        .map((table) => new Table(context, table));
    });
  }

  getSpecialCellsOrNullObject(kind: string): RangeAreas {
    if (kind !== "Formulas") throw new Error(`${kind} cells are not known here`);
    return new RangeAreas(this.context, () => this.where().sheet);
  }

  getSpillingToRangeOrNullObject(): Range {
    const spill = this.part(({ sheet, area }) => ({
      ...area,
      ...this.context.fake.sheets.get(sheet)?.get(addressOf(area.row, area.column))?.spill,
    }));
    this.context.later("find spill", () => {
      const { sheet, area } = this.where();
      const cell = this.context.fake.sheets.get(sheet)?.get(addressOf(area.row, area.column));
      spill.isNullObject = cell?.spill === undefined;
    });
    return spill;
  }

  getSpillParentOrNullObject(): Range {
    const parentOf = ({ sheet, area }: Where): Area | undefined => {
      for (const [at, { spill }] of this.context.fake.sheets.get(sheet) ?? []) {
        const filled = spill && { ...parseArea(at), ...spill };
        if (filled && meet(filled, area)) return { ...filled, rows: 1, columns: 1 };
      }
      return undefined;
    };
    const parent = this.part((where) => parentOf(where) ?? where.area);
    this.context.later("find spill parent", () => {
      parent.isNullObject = parentOf(this.where()) === undefined;
    });
    return parent;
  }

  private part(area: (where: Where) => Area): Range {
    return new Range(this.context, () => ({ sheet: this.where().sheet, area: area(this.where()) }));
  }

  private cells(): Map<string, FakeCell> {
    return this.context.fake.sheets.get(this.where().sheet) ?? fail("ItemNotFound");
  }

  private grid<T>(read: (cell: FakeCell | undefined) => T): T[][] {
    const { row, column, rows, columns } = this.where().area;
    const cells = this.cells();
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (__, c) => read(cells.get(addressOf(row + r, column + c)))),
    );
  }

  private readNow(property: string): unknown {
    const { sheet, area } = this.where();
    switch (property) {
      case "address":
        this.cells();
        return sheetPrefix(sheet) + areaAddress(area);
      case "values":
        return this.grid((cell) => cell?.value ?? "");
      case "formulas":
        return this.grid((cell) => cell?.formula ?? cell?.value ?? "");
      case "valueTypes":
        return this.grid((cell) => typeOf(cell?.value));
      default:
        return fail("InvalidArgument");
    }
  }

  private write(kind: "values" | "formulas", rows: unknown[][]): void {
    this.context.later(`write ${kind} ${this.shown}`, () => {
      const { sheet, area } = this.where();
      const cells = this.cells();
      if (this.context.fake.protectedSheets.has(sheet)) fail("AccessDenied");
      if (rows.length !== area.rows || rows.some((line) => line.length !== area.columns))
        fail("InvalidArgument");
      rows.forEach((line, r) => {
        line.forEach((typed, c) => {
          if (typed === null) return;
          const at = addressOf(area.row + r, area.column + c);
          if (typed === "") cells.delete(at);
          else cells.set(at, this.entered(typed as FakeCell["value"]));
        });
      });
    });
  }

  /** What becomes of a value that is typed. */
  private entered(typed: FakeCell["value"]): FakeCell {
    if (typeof typed !== "string") return { value: typed };
    if (typed.startsWith("'")) return { value: typed.slice(1) };
    if (/^[=+-]/.test(typed)) return { formula: typed, value: this.context.fake.compute(typed) };
    if (/^(true|false)$/i.test(typed)) return { value: typed.toLowerCase() === "true" };
    return { value: Number.isNaN(Number(typed)) ? typed : Number(typed) };
  }
}

class RangeAreas extends ClientObject {
  readonly areas: Collection<Range>;

  constructor(context: Context, sheet: () => string) {
    const formulaCells = () => {
      const cells = context.fake.sheets.get(sheet()) ?? fail("ItemNotFound");
      return [...cells]
        .filter(([, { formula }]) => formula !== undefined)
        .map(([at]) => new Range(context, () => ({ sheet: sheet(), area: parseArea(at) })));
    };
    super(context, () =>
      formulaCells()
        .map(({ shown }) => shown)
        .join(","),
    );
    this.areas = new Collection(context, formulaCells);
    context.later("find formulas", () => {
      this.isNullObject = formulaCells().length === 0;
    });
  }
}

const typeOf = (value: FakeCell["value"] | undefined): string => {
  if (value === undefined) return "Empty";
  if (typeof value === "number") return "Double";
  if (typeof value === "boolean") return "Boolean";
  return /^#[A-Z/0]+[!?A]$/.test(value) ? "Error" : "String";
};

const meet = (one: Area, other: Area): boolean =>
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;
