import type { Value } from "../book";
import { serialDate } from "../dates";
import { WorkbookRefusal } from "../workbook-refusal";
import { unescapeText } from "../xml-text";

const secondsPerDay = 86_400;

/** 2024-01-31 or 2024-01-31T06:00:00 → its serial number. */
function serialOf(text: string): number | undefined {
  const parts = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?Z?)?$/.exec(text);
  if (!parts) return undefined;
  const [year, month, day, hours, minutes, seconds] = parts
    .slice(1)
    .map((part) => Number(part ?? 0)) as [number, number, number, number, number, number];
  return serialDate(year, month, day) + (hours * 3600 + minutes * 60 + seconds) / secondsPerDay;
}

/** What a cell holds, by its type (attribute t) and the text of its value. */
export function cellValue(
  type: string | undefined,
  text: string,
  strings: readonly string[],
  address: string,
): Value {
  const damaged = () =>
    new WorkbookRefusal(
      `The file is damaged: the cell ${address} holds ${JSON.stringify(text.slice(0, 40))}, which is no value of its type.`,
    );
  if (type === "inlineStr" || type === "str") return unescapeText(text);
  if (text === "") return null;
  switch (type) {
    case "s": {
      const string = strings[Number(text)];
      if (string === undefined) throw damaged();
      return string;
    }
    case "b":
      return text.trim() === "1" || text.trim() === "true";
    case "e":
      if (!/^#[A-Z0-9_/]+[!?]?$/.test(text)) throw damaged();
      return { error: text };
    case "d": {
      const serial = serialOf(text.trim());
      if (serial === undefined) throw damaged();
      return serial;
    }
    default: {
      const number = Number(text);
      if (!Number.isFinite(number)) throw damaged();
      return number;
    }
  }
}
