/** A planned workbook with what people made of it: their cells, tables that grew, sheets and tables of their own. */
import type { Area, Book, Style, Table } from "../book";
import {
  type BesideCells,
  bareSheet,
  type CellsOf,
  type PlannedBook,
  type PlannedSheet,
  type PlannedTable,
} from "./planned";

/** Of a planned workbook what is not in the cells, its sheets called as they are called now. */
export interface Frame extends Partial<Pick<PlannedBook, "title" | "question">> {
  readonly sheets: readonly NamedFrame[];
  readonly tables: readonly PlannedTable[];
  readonly styles: Readonly<Record<string, Style>>;
}

export interface NamedFrame extends BesideCells {
  readonly name: string;
}

export type FilledIn = Omit<Book & Frame, "sheets" | "tables"> &
  Pick<PlannedBook, "sheets" | "tables">;

export function filledIn(frame: Frame, book: Book): FilledIn {
  const grown = growthsOf(frame.tables, book.tables);
  const sheets = book.sheets.map((sheet): PlannedSheet => {
    const its = frame.sheets.find(({ name }) => name === sheet.name);
    if (!its) return { ...sheet, ...bareSheet };
    const { print, gridlines, entryRules, formats, comments, charts } = grownSheet(its, grown);
    return { ...sheet, print, gridlines, entryRules, formats, comments, charts };
  });
  const tables = book.tables.map((table): PlannedTable => {
    const plan = frame.tables.find(({ name }) => name === table.name);
    return { ...table, formulas: plan?.formulas ?? table.columns.map(() => undefined) };
  });
  const styles = { ...frame.styles, ...book.styles };
  return { ...frame, sheets, tables, styles, definedNames: book.definedNames };
}

/** A sheet's frame with the rows that tables took in since they stood as `before`. */
export const withGrownTables = (
  sheet: NamedFrame,
  before: readonly Table[],
  now: readonly Table[],
): NamedFrame => grownSheet(sheet, growthsOf(before, now));

/** What stood over the whole body of a table goes on doing so when the table has more rows. */
interface Growth {
  readonly sheet: string;
  readonly body: Area;
  readonly rows: number;
}

function growthsOf(before: readonly Table[], now: readonly Table[]): Growth[] {
  return before.flatMap((table) => {
    const its = now.find(({ name }) => name === table.name);
    const rows = (its?.area.rows ?? 0) - table.area.rows;
    return rows > 0 ? [{ sheet: table.sheet, body: bodyOf(table), rows }] : [];
  });
}

export function bodyOf({ area, headerRow, totalsRow }: Table): Area {
  const above = headerRow ? 1 : 0;
  return { ...area, row: area.row + above, rows: area.rows - above - (totalsRow ? 1 : 0) };
}

/** Whether an area stands over all rows of a table's body, in some of its columns. */
export const spansBody = (area: Area, body: Area): boolean =>
  area.row === body.row &&
  area.rows === body.rows &&
  area.column >= body.column &&
  area.column + area.columns <= body.column + body.columns;

function grownArea(area: Area, sheet: string, grown: readonly Growth[]): Area {
  const growth = grown.find(({ body, ...its }) => its.sheet === sheet && spansBody(area, body));
  return growth ? { ...area, rows: area.rows + growth.rows } : area;
}

function grownSheet(plan: NamedFrame, grown: readonly Growth[]): NamedFrame {
  if (grown.length === 0) return plan;
  const onGrown = <Rule extends { readonly area: Area }>(rule: Rule): Rule => ({
    ...rule,
    area: grownArea(rule.area, plan.name, grown),
  });
  const cellsOf = (cells: CellsOf): CellsOf => ({
    ...cells,
    area: grownArea(cells.area, cells.sheet, grown),
  });
  return {
    ...plan,
    entryRules: plan.entryRules.map(onGrown),
    formats: plan.formats.map(onGrown),
    charts: plan.charts.map((chart) => ({
      ...chart,
      series: chart.series.map((one) => ({
        ...one,
        values: cellsOf(one.values),
        ...(one.x === undefined ? {} : { x: cellsOf(one.x) }),
      })),
    })),
  };
}
