import type { Part, Plan } from "../../workbook/plan";

/** What a sheet of a template holds, in words. */
export interface Holding {
  readonly sheet: string;
  readonly holds: readonly string[];
}

export const holdingsOf = ({ sheets }: Plan): readonly Holding[] =>
  sheets.map(({ name, parts }) => ({ sheet: name, holds: inWords(parts) }));

function inWords(parts: readonly Part[]): readonly string[] {
  const all = <K extends Part["kind"]>(kind: K) =>
    parts.filter((part): part is Extract<Part, { kind: K }> => part.kind === kind);
  const words: string[] = [];
  const [inputs, results] = [all("input"), all("result")];
  if (inputs.length > 0) {
    words.push(`to type: ${inputs.map(({ label, unit }) => withUnit(label, unit)).join(", ")}`);
  }
  for (const { columns } of all("table")) {
    words.push(`table: ${columns.map(({ header, unit }) => withUnit(header, unit)).join(", ")}`);
  }
  if (results.length > 0) {
    words.push(`computed: ${results.map(({ label, unit }) => withUnit(label, unit)).join(", ")}`);
  }
  const spilled = all("spill").flatMap(({ headers = [] }) =>
    headers.filter((header) => !header.startsWith("=")),
  );
  if (spilled.length > 0) words.push(`computed in columns: ${spilled.join(", ")}`);
  for (const { title, alt } of all("chart")) words.push(`chart: ${title}. ${alt}`);
  return words.length > 0 ? words : ["words to read first"];
}

const withUnit = (label: string, unit: string | undefined) =>
  unit === undefined || unit === "" ? label : `${label} [${unit}]`;
