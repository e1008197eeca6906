import type { EmulatedExcel, HostCell } from "./emulated-excel";

/** What computes the functions inside one another. */
type Host = Pick<EmulatedExcel, "call">;

/**
 * Runs the formula of a documented example: numbers, texts, TRUE and FALSE, array constants {1,2;3,4},
 * arguments left out, and functions of ours inside one another.
 */
export function runExample(excel: Host, formula: string): HostCell[][] {
  const reader = new Reader(formula.replace(/^=/, ""));
  const value = readValue(reader, excel);
  reader.end();
  return Array.isArray(value) ? value : [[value as HostCell]];
}

/** The arguments of the example's outermost call; none where the formula is more than one call. */
export function exampleArguments(excel: Host, formula: string): unknown[] {
  const reader = new Reader(formula.replace(/^=/, ""));
  return reader.take(/WETEND\.[A-Z.]+\(/) === undefined ? [] : readArguments(reader, excel);
}

/** The answer as the example prints it: each cell as its text. */
export function readPrinted(answer: string): string[][] {
  const inside = answer.startsWith("{") ? answer.slice(1, answer.lastIndexOf("}")) : undefined;
  if (inside === undefined) return [[printedCell(answer)]];
  const cells = /\s*("(?:[^"]|"")*"|[^,;]+)\s*([,;]|$)/gy;
  const rows: string[][] = [[]];
  for (const [, cell = "", separator] of inside.matchAll(cells)) {
    (rows.at(-1) as string[]).push(printedCell(cell));
    if (separator === ";") rows.push([]);
  }
  return rows;
}

/** A printed number stands before its unit: "2455.446 L/h". */
function printedCell(text: string): string {
  const trimmed = text.trim();
  if (trimmed.startsWith('"')) return trimmed.slice(1, -1).replaceAll('""', '"');
  return trimmed.split(/\s/)[0] as string;
}

/** Whether a computed cell has the digits that are printed. */
export function hasDigits(cell: HostCell | undefined, printed: string): boolean {
  if (typeof cell === "object" && cell !== null)
    return (cell as { code?: string }).code === printed;
  if (typeof cell === "boolean") return String(cell).toUpperCase() === printed;
  if (typeof cell !== "number") return cell === printed;
  const [mantissa = "", exponent = "0"] = printed.toLowerCase().split("e");
  const decimals = (mantissa.split(".")[1] ?? "").length;
  const lastPlace = 10 ** (Number(exponent) - decimals);
  return Math.abs(cell - Number(printed)) <= lastPlace * 0.5000001;
}

class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  take(pattern: RegExp): string | undefined {
    const sticky = new RegExp(pattern.source, "y");
    sticky.lastIndex = this.at;
    const found = sticky.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  skip(): void {
    this.take(/\s*/);
  }

  end(): void {
    this.skip();
    if (this.at < this.text.length) throw new Error(`cannot read "${this.text}" at ${this.at}`);
  }
}

function readValue(reader: Reader, excel: Host): unknown {
  reader.skip();
  const number = reader.take(/[-+]?\d+(\.\d+)?([eE][-+]?\d+)?%?/);
  if (number !== undefined) {
    return number.endsWith("%") ? Number(number.slice(0, -1)) / 100 : Number(number);
  }
  const text = reader.take(/"(?:[^"]|"")*"/);
  if (text !== undefined) return text.slice(1, -1).replaceAll('""', '"');
  const truth = reader.take(/TRUE|FALSE/);
  if (truth !== undefined) return truth === "TRUE";
  if (reader.take(/\{/) !== undefined) return readArray(reader, excel);
  const call = reader.take(/WETEND\.[A-Z.]+\(/);
  if (call !== undefined) return excel.call(call.slice(7, -1), ...readArguments(reader, excel));
  return undefined;
}

function readArray(reader: Reader, excel: Host): unknown[][] {
  const rows: unknown[][] = [[]];
  for (;;) {
    (rows.at(-1) as unknown[]).push(readValue(reader, excel) ?? null);
    reader.skip();
    const mark = reader.take(/[,;}]/);
    if (mark === "}") return rows;
    if (mark === undefined) reader.end();
    if (mark === ";") rows.push([]);
  }
}

function readArguments(reader: Reader, excel: Host): unknown[] {
  const values: unknown[] = [];
  for (;;) {
    values.push(readValue(reader, excel));
    reader.skip();
    const mark = reader.take(/[,)]/);
    if (mark === ")") break;
    if (mark === undefined) reader.end();
  }
  return values.length === 1 && values[0] === undefined ? [] : values;
}
