/** A planned workbook with what people made of it: their cells, tables that grew, sheets and tables of their own. */
import type { Area, Book, Sheet, Table } from "../book";
import type { CellsOf, PlannedBook, PlannedSheet, PlannedTable } from "./planned";

export function filledIn(planned: PlannedBook, book: Book): PlannedBook {
  const grown = growthsOf(planned, book);
  const sheets = book.sheets.map((sheet): PlannedSheet => {
    const plan = planned.sheets.find(({ name }) => name === sheet.name);
    if (!plan) return plainSheet(sheet);
    const { cells, columnWidths = {} } = sheet;
    return { ...grownSheet(plan, grown), cells, columnWidths };
  });
  const tables = book.tables.map((table): PlannedTable => {
    const plan = planned.tables.find(({ name }) => name === table.name);
    return { ...table, formulas: plan?.formulas ?? table.columns.map(() => undefined) };
  });
  const styles = { ...planned.styles, ...book.styles };
  return { ...planned, sheets, tables, styles, definedNames: book.definedNames };
}

const plainSheet = (sheet: Sheet): PlannedSheet => ({
  ...sheet,
  print: {},
  gridlines: true,
  validations: [],
  rules: [],
  charts: [],
});

/** What stood over the whole body of a table goes on doing so when the table has more rows. */
interface Growth {
  readonly sheet: string;
  readonly body: Area;
  readonly rows: number;
}

function growthsOf(planned: PlannedBook, book: Book): Growth[] {
  return planned.tables.flatMap((before) => {
    const now = book.tables.find(({ name }) => name === before.name);
    const rows = (now?.area.rows ?? 0) - before.area.rows;
    return rows > 0 ? [{ sheet: before.sheet, body: bodyOf(before), rows }] : [];
  });
}

function bodyOf({ area, headerRow, totalsRow }: Table): Area {
  const above = headerRow ? 1 : 0;
  return { ...area, row: area.row + above, rows: area.rows - above - (totalsRow ? 1 : 0) };
}

function grownArea(area: Area, sheet: string, grown: readonly Growth[]): Area {
  const growth = grown.find(
    ({ body, ...its }) =>
      its.sheet === sheet &&
      area.row === body.row &&
      area.rows === body.rows &&
      area.column >= body.column &&
      area.column + area.columns <= body.column + body.columns,
  );
  return growth ? { ...area, rows: area.rows + growth.rows } : area;
}

function grownSheet(plan: PlannedSheet, grown: readonly Growth[]): PlannedSheet {
  if (grown.length === 0) return plan;
  const cellsOf = (cells: CellsOf): CellsOf => ({
    ...cells,
    area: grownArea(cells.area, cells.sheet, grown),
  });
  return {
    ...plan,
    validations: plan.validations.map((one) => ({
      ...one,
      area: grownArea(one.area, plan.name, grown),
    })),
    rules: plan.rules.map((one) => ({ ...one, area: grownArea(one.area, plan.name, grown) })),
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
