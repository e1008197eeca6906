import { readFile } from "node:fs/promises";
import path from "node:path";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { addressOf, areaAddress } from "../../src/workbook/address";
import { type Cell, isError } from "../../src/workbook/book";
import { ourNames, recentNames, usesOurs, usesRecent } from "../../src/workbook/formula/ours";
import { storedFormula } from "../../src/workbook/formula/stored-form";
import { tokensOf } from "../../src/workbook/formula/tokens";
import { layOut } from "../../src/workbook/layout/lay-out";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import type { BlockPart, ChartPart, InputPart } from "../../src/workbook/plan";
import { writeWorkbook } from "../../src/workbook/write/write-workbook";
import { plans } from "../../templates/plans";
import { computed, functionIds, names, recalculated, valueNamed } from "./computed";

/** A thousand samples take seconds where others compute, too. */
const PATIENCE = 60_000;

/** Characters in a column that is given no width of its own. */
const USUAL_WIDTH = 8.43;

/** Of a line of text, in points. */
const LINE_HEIGHT = 15;

const fileOf = (id: string) =>
  readFile(path.join(import.meta.dirname, `../../templates/${id}.xlsx`));

/** Every formula of a book, those of its rules, too. */
function formulasOf(book: PlannedBook): string[] {
  return book.sheets.flatMap((sheet) => [
    ...Object.values(sheet.cells).flatMap((row) =>
      Object.values(row).flatMap(({ formula }) => formula ?? []),
    ),
    ...sheet.entryRules.flatMap(({ type, from, to }) =>
      type === "list" && from?.startsWith('"') ? [] : [from ?? [], to ?? []].flat(),
    ),
    ...sheet.formats.flatMap(({ formula }) => formula ?? []),
  ]);
}

/** Whether a header breaks inside a word where it wraps: a grid may break one behind a slash. */
function isBroken(header: string, width: number): boolean {
  // Bold letters take more room than the digits that widths are counted in.
  const fits = (text: string) => 1.1 * text.length <= width;
  let line = "";
  for (const word of header.split(" ")) {
    const together = line === "" ? word : `${line} ${word}`;
    const cut = word.lastIndexOf("/");
    const isCut = cut > 0 && fits(`${together.slice(0, cut - word.length)}/`);
    if (!fits(together) && (isCut || !fits(word))) return true;
    line = fits(together) ? together : word;
  }
  return false;
}

test("the five workbooks are there, in the order of the work", () => {
  expect(plans.map(({ id }) => id)).toEqual([
    "furnish-partition",
    "dose-and-effluent",
    "strength-cost",
    "chemical-budget",
    "dose-ladder",
  ]);
});

describe.each(plans)("the template $id", (plan) => {
  let book: PlannedBook;
  let failures: Awaited<ReturnType<typeof computed>>["failures"];

  beforeAll(async () => {
    ({ book, failures } = await computed(plan));
  }, PATIENCE);

  test("names no function of ours that is not there", () => {
    const called = formulasOf(book)
      .flatMap((formula) => tokensOf(formula))
      .filter(({ kind, text }) => kind === "function" && /^WETEND\./i.test(text))
      .map(({ text }) => text.replace(/^WETEND\./, ""));
    expect(called.length).toBeGreaterThan(0);
    expect(called.filter((name) => !functionIds.includes(name))).toEqual([]);
  });

  test("leaves no table's name alone in what the copy with values keeps: to some programs it means the heads, too", () => {
    const ours = ourNames(book, names);
    const recent = recentNames(book);
    const kept = formulasOf(book).filter(
      (formula) => !usesOurs(formula, names, ours) && !usesRecent(formula, recent),
    );
    expect(kept.length).toBeGreaterThan(0);
    const tables = new Set(book.tables.map(({ name }) => name.toLowerCase()));
    const alone = kept.filter((formula) =>
      tokensOf(formula).some(
        ({ kind, text }, at, tokens) =>
          kind === "word" && tables.has(text.toLowerCase()) && tokens[at + 1]?.kind !== "bracket",
      ),
    );
    expect(alone).toEqual([]);
  });

  test("keeps every formula within the 8192 characters that a cell may store", () => {
    const lengths = formulasOf(book).map((formula) => storedFormula(formula, names).length);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(8192);
  });

  test("computes every cell without a failure", () => {
    expect(failures).toEqual([]);
    const empty = book.sheets.flatMap((sheet) =>
      Object.entries(sheet.cells).flatMap(([row, cells]) =>
        Object.entries(cells)
          .filter(([, { formula, value }]) => formula !== undefined && value === null)
          .map(([column]) => `${sheet.name}!${addressOf(Number(row), Number(column))}`),
      ),
    );
    expect(empty).toEqual([]);
  });

  test("is the committed file, byte for byte", { timeout: PATIENCE }, async () => {
    const built = await writeWorkbook(book, names);
    expect(Buffer.compare(Buffer.from(built), await fileOf(plan.id))).toBe(0);
  });

  test("opens in another program with its values, names, tables and checks", {
    timeout: PATIENCE,
  }, async () => {
    const file = await fileOf(plan.id);
    const read = await new ExcelJS.Workbook().xlsx.load(file.buffer as ArrayBuffer);
    expect(read.worksheets.map(({ name }) => name)).toEqual(book.sheets.map(({ name }) => name));
    for (const { name, formula } of book.definedNames) {
      expect(read.definedNames.getRanges(name).ranges).toEqual([formula]);
      const [sheet, address] = formula.replaceAll(/[$']/g, "").split("!") as [string, string];
      const cell = read.getWorksheet(sheet)?.getCell(address);
      const held = cell?.formula === undefined ? cell?.value : cell.result;
      // That library hands over a cell with a format for dates as a date, counted from 1970 in milliseconds.
      const number = held instanceof Date ? held.getTime() / 86_400_000 + 25_569 : held;
      expect(number, name).toEqual(valueNamed(book, name));
    }
    for (const { name, sheet, area } of book.tables) {
      const table = read.getWorksheet(sheet)?.getTable(name) as unknown as {
        table: { tableRef: string };
      };
      expect(table.table.tableRef).toBe(areaAddress(area));
    }
    for (const sheet of book.sheets)
      for (const { area, prompt, refusal } of sheet.entryRules) {
        expect(refusal?.text, "words, not a formula").not.toMatch(/[{}$]|[A-Z]+\(|\w\.[a-z]/);
        const cell = read.getWorksheet(sheet.name)?.getCell(area.row + 1, area.column + 1);
        expect(cell?.dataValidation).toMatchObject({
          errorTitle: refusal?.title,
          error: refusal?.text,
          promptTitle: prompt?.title,
          prompt: prompt?.text,
        });
      }
  });

  test("goes into a workbook twice without touching the first copy", {
    timeout: PATIENCE,
  }, async () => {
    const taken = {
      sheets: new Set(book.sheets.map(({ name }) => name.toLowerCase())),
      words: new Set([...book.definedNames, ...book.tables].map(({ name }) => name.toLowerCase())),
    };
    const second = layOut(plan, taken);
    const both = await recalculated({
      sheets: [...book.sheets, ...second.sheets],
      tables: [...book.tables, ...second.tables],
      definedNames: [...book.definedNames, ...second.definedNames],
      styles: { ...book.styles, ...second.styles },
    });
    expect(new Set(both.book.sheets.map(({ name }) => name)).size).toBe(2 * book.sheets.length);
    const words = [...both.book.definedNames, ...both.book.tables].map(({ name }) => name);
    expect(new Set(words).size).toBe(words.length);
    expect(both.failures).toEqual([]);
    book.definedNames.forEach(({ name }, index) => {
      const copy = second.definedNames[index]?.name as string;
      expect(valueNamed(both.book, copy), name).toEqual(valueNamed(book, name));
    });
  });

  test("asks for nothing without saying what, and checks what is typed", () => {
    const parts = plan.sheets.flatMap((sheet) => sheet.parts);
    const inputs = parts.filter((part): part is InputPart => part.kind === "input");
    expect(inputs.filter(({ allow, help }) => !allow || !help)).toEqual([]);
    const blocks = parts.filter((part): part is BlockPart => part.kind === "block");
    const asked = blocks.filter(({ look }) => look === "input");
    expect(asked.filter(({ allow, help, label }) => !allow || !help || !label)).toEqual([]);
  });

  test("leaves no label cut off by the number beside it", () => {
    const cut = plan.sheets.flatMap(({ name, widths = {}, parts }) =>
      parts.flatMap((part) => {
        if (part.kind !== "input" && part.kind !== "result") return [];
        const width = widths[part.at.replace(/\d+/, "")] ?? 0;
        return part.label.length > 0.96 * width ? [`${name}: ${part.label}`] : [];
      }),
    );
    expect(cut).toEqual([]);
  });

  test("stretches no row of an input by a text that wraps beside it", () => {
    const stretched = book.sheets.flatMap(({ name, cells, rowHeights = {} }) =>
      Object.entries(cells).flatMap(([row, line]) => {
        const input = Object.entries(line).find(([, { style }]) => /^input\b/.test(style ?? ""));
        const isTall = (rowHeights[Number(row)] ?? 0) >= 2 * LINE_HEIGHT;
        return input && isTall ? `${name}!${addressOf(Number(row), Number(input[0]))}` : [];
      }),
    );
    expect(stretched).toEqual([]);
  });

  test("breaks no word of a header, and no unit at its slash", () => {
    const { sheets, styles } = layOut(plan);
    const broken = sheets.flatMap(({ name, cells, columnWidths = {}, merged = [] }) =>
      Object.entries(cells).flatMap(([row, line]) =>
        Object.entries<Cell>(line).flatMap(([column, { value, style }]) => {
          const { bold, wrap } = styles[style ?? ""] ?? {};
          if (typeof value !== "string" || !bold || !wrap) return [];
          if (merged.some((area) => area.row === Number(row) && area.column === Number(column)))
            return [];
          return isBroken(value, columnWidths[Number(column)] ?? USUAL_WIDTH)
            ? [`${name}: ${value}`]
            : [];
        }),
      ),
    );
    expect(broken).toEqual([]);
  });

  test("draws charts with titles and units on their axes, and says them in words", () => {
    const charts = plan.sheets
      .flatMap(({ parts }) => parts)
      .filter((part): part is ChartPart => part.kind === "chart");
    expect(charts.length).toBeGreaterThan(0);
    for (const { title, alt, x, y } of charts) {
      expect(title).not.toBe("");
      expect(alt.length).toBeGreaterThan(60);
      expect(x.title).not.toBe("");
      expect(y.title).toMatch(/\(.+\)$/);
    }
  });

  test("begins with a sheet that says what it answers, what to type, and what it leaves out", () => {
    const about = Object.values(book.sheets[0]?.cells ?? {})
      .flatMap((row) => Object.values(row))
      .map(({ value }) => (isError(value) ? value.error : value));
    expect(about).toContain(plan.question);
    for (const heading of [
      "The answer now",
      "What to type where",
      "What it does not cover",
      "Caution",
    ])
      expect(about).toContain(heading);
    expect(about.some((text) => `${text}`.includes("invented mill"))).toBe(true);
  });
});
