/** What a condition compares with, as a person gives it: a number, a text, or a day. */
import { getNumfmtParseValueFilter } from "@univerjs/core";
import { partsOfSerial, serialDate } from "../../workbook/dates";
import { element, labelled } from "../element";
import { type Asked, type ConditionKind, kindOf } from "./conditions";

/** What the values of a column are, for the most part. */
export type ColumnType = "numbers" | "days" | "texts";

export interface ConditionFields {
  readonly parts: readonly HTMLElement[];
  /** Or the sentence what is missing. */
  asked(): Asked | string;
}

const ordered = new Set<ConditionKind>([
  "greaterThan",
  "greaterThanOrEqual",
  "lessThan",
  "lessThanOrEqual",
  "between",
]);

export function conditionFields(
  kind: ConditionKind,
  given: readonly string[],
  type: ColumnType,
): ConditionFields {
  const { values, ofText } = kindOf(kind);
  const byDay = type === "days" && !ofText;
  const fields = Array.from({ length: values }, (_, at) => {
    const value = given[at] ?? "";
    return element("input", {
      type: byDay ? "date" : "text",
      value: byDay && value !== "" ? dayText(Number(value)) : value,
    });
  });
  const words = values === 2 ? ["From", "To"] : [byDay ? "Day" : "Value"];
  return {
    parts: fields.map((field, at) => labelled(words[at] ?? "", field)),
    asked: () => {
      const read = fields.map(({ value }) =>
        ofText ? value : byDay ? serialText(value) : plainText(value),
      );
      if (read.includes("")) return byDay ? "Give a day." : "Give a value to compare with.";
      const isNumber = (text: string) => Number.isFinite(Number(text));
      if (ordered.has(kind) && type === "numbers" && !read.every(isNumber)) return "Give a number.";
      if (kind === "between" && read.every(isNumber))
        read.sort((one, other) => Number(one) - Number(other));
      return { kind, values: read };
    },
  };
}

const dayText = (serial: number) =>
  partsOfSerial(serial)
    .slice(0, 3)
    .map((part, at) => `${part}`.padStart(at === 0 ? 4 : 2, "0"))
    .join("-");

function serialText(day: string): string {
  const [year, month, date] = day.split("-").map(Number);
  return year && month && date ? String(serialDate(year, month, date)) : "";
}

/** 5 % is 0.05, as in a cell. */
function plainText(typed: string): string {
  const value = getNumfmtParseValueFilter(typed.trim())?.v;
  return typeof value === "number" ? String(value) : typed.trim();
}
