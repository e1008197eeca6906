import type { Part, Plan } from "../../src/workbook/plan";

type Typed = number | string | null;

/** A template with other inputs, as a user types them: by name, or by table and column for each row. */
export function typedOver(
  plan: Plan,
  inputs: Readonly<Record<string, number | string>>,
  columns: Readonly<Record<string, (value: Typed, row: number) => Typed>> = {},
): Plan {
  const left = new Set([...Object.keys(inputs), ...Object.keys(columns)]);
  const changed = (part: Part): Part => {
    if (part.kind === "input" && part.name in inputs) {
      left.delete(part.name);
      return { ...part, value: inputs[part.name] as number | string };
    }
    if (part.kind !== "table") return part;
    return {
      ...part,
      columns: part.columns.map((column) => {
        const name = `${part.name}.${column.key}`;
        const change = columns[name];
        if (!change || !column.values) return column;
        left.delete(name);
        return { ...column, values: (column.values as readonly Typed[]).map(change) };
      }),
    };
  };
  const sheets = plan.sheets.map((sheet) => ({ ...sheet, parts: sheet.parts.map(changed) }));
  if (left.size > 0) throw new Error(`The template has no input ${[...left].join(", ")}.`);
  return { ...plan, sheets };
}
