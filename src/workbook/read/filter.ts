/** The filter over the rows of a sheet or of a table, element by element (ECMA-376 Part 1, 18.3.2). */
import type { Area } from "../book";
import {
  type ChosenValues,
  type Condition,
  type Conditions,
  type DateParts,
  type Filter,
  type FilteredColumn,
  type OtherKind,
  operators,
} from "../filter";
import { isOn } from "../xml";
import { attributesXml } from "../xml-text";
import { areaIfAny } from "./place";

type Attributes = Readonly<Record<string, string>>;

/** More than anybody chooses from a list. */
const MOST_VALUES = 100_000;

/** The kinds that name nothing elsewhere in their file. */
const selfContained = new Set(["top10", "dynamicFilter", "iconFilter"]);
export const dateParts = ["year", "month", "day", "hour", "minute", "second"];

/** A criterion while its elements come. */
type Open =
  | (ChosenValues & { readonly texts: string[]; readonly dates: DateParts[] })
  | (Conditions & { readonly conditions: Condition[] })
  | OtherKind;

/** Takes nothing from elements outside the filter, and refuses no file: what is not understood is another kind. */
export class FilterReader {
  #area: Area | undefined;
  readonly #columns: FilteredColumn[] = [];
  #column: number | undefined;
  #criterion: Open | undefined;
  #isOpen = false;
  #isDone = false;

  open(name: string, attributes: Attributes): void {
    // Views that somebody stored have filters of their own.
    if (name === "customSheetViews") this.#isDone = true;
    if (this.#isDone) return;
    if (name === "autoFilter") {
      this.#area = areaIfAny(attributes.ref ?? "");
      this.#isOpen = this.#area !== undefined;
    } else if (this.#isOpen && name === "filterColumn") this.#column = Number(attributes.colId);
    else if (this.#column !== undefined) this.#openInColumn(name, attributes);
  }

  close(name: string): void {
    if (name === "autoFilter" && this.#isOpen) this.#isDone = true;
    if (name !== "filterColumn") return;
    const column = Number(this.#column);
    if (this.#criterion && column >= 0 && column < (this.#area?.columns ?? 0))
      this.#columns.push({ column, criterion: this.#criterion });
    this.#column = undefined;
    this.#criterion = undefined;
  }

  #openInColumn(name: string, attributes: Attributes): void {
    const known = this.#criterion;
    if (!known) this.#criterion = criterionOf(name, attributes);
    else if (known.kind === "values") {
      addValue(known, name, attributes);
      if (known.texts.length + known.dates.length > MOST_VALUES)
        this.#criterion = { kind: "other", xml: "" };
    } else if (known.kind === "conditions") addCondition(known, name, attributes);
  }

  filter(): Filter | undefined {
    if (!this.#area) return undefined;
    const columns = this.#columns.sort((one, other) => one.column - other.column);
    return { area: this.#area, columns };
  }
}

function criterionOf(name: string, attributes: Attributes): Open {
  const { calendarType = "none", blank, and } = attributes;
  if (name === "filters" && (calendarType === "none" || calendarType === "gregorian"))
    return { kind: "values", texts: [], dates: [], blank: isOn(blank) };
  if (name === "customFilters") return { kind: "conditions", all: isOn(and), conditions: [] };
  const xml = selfContained.has(name) ? `<${name}${attributesXml(attributes)}/>` : "";
  return { kind: "other", xml };
}

function addValue(
  { texts, dates }: { readonly texts: string[]; readonly dates: DateParts[] },
  name: string,
  attributes: Attributes,
): void {
  if (name === "filter" && attributes.val !== undefined) texts.push(attributes.val);
  if (name !== "dateGroupItem") return;
  const depth = dateParts.indexOf(attributes.dateTimeGrouping ?? "") + 1;
  const parts = dateParts.slice(0, depth).map((part) => Number(attributes[part]));
  if (depth > 0 && parts.every(Number.isInteger)) dates.push(parts);
}

function addCondition(
  { conditions }: { readonly conditions: Condition[] },
  name: string,
  { operator = "equal", val = "" }: Attributes,
): void {
  const known = operators.find((one) => one === operator);
  if (name === "customFilter" && known) conditions.push({ operator: known, value: val });
}
