/** The form in which a person says what a column has to hold: chosen values, or a condition. */
import { areaAddress } from "../../workbook/address";
import type { Criterion } from "../../workbook/filter";
import { element, labelled } from "../element";
import type { Grid } from "../grid/grid";
import { type ColumnType, type ConditionFields, conditionFields } from "./condition-fields";
import { askedOf, type ConditionKind, conditionKinds, criterionOf } from "./conditions";
import { type Filterable, rowsBeside } from "./filter-rows";
import { chosenValues, type ListedValue, listedValues } from "./listed-values";
import { testOf } from "./passes";
import { seenCell } from "./seen-cell";
import { type ValueList, valueList } from "./value-list";

export interface PanelActions {
  /** Undefined clears the column. */
  set(column: number, criterion: Criterion | undefined): void;
  clearAll(): void;
}

/** How the values are told: from the list, by a condition, or in a way that the page has no words for. */
type Way = "list" | "kept" | ConditionKind;

export function filterPanel(
  grid: Grid,
  rows: Filterable,
  { set, clearAll }: PanelActions,
): HTMLFormElement {
  const { filter, titles } = rows;
  const body = { ...filter.area, row: filter.area.row + 1, rows: filter.area.rows - 1 };
  const columns = element("select");
  for (const [at, title] of titles.entries()) {
    const isSet = filter.columns.some(({ column }) => column === at);
    columns.append(element("option", { value: `${at}` }, isSet ? `${title}, filtered` : title));
  }
  columns.value = `${rows.column}`;
  const ways = element("select");
  const choice = element("div", { className: "choice-of-values" });
  const refusal = element("p", { className: "refusal" });
  refusal.setAttribute("role", "alert");
  const clear = element("button", { type: "button" }, "Clear column");
  const clearEach = element("button", { type: "button" }, "Clear all");
  clearEach.disabled = filter.columns.length === 0;

  let column = rows.column;
  let criterion: Criterion | undefined;
  let values: readonly ListedValue[] = [];
  let list: ValueList | undefined;
  let fields: ConditionFields | undefined;

  const showWay = (way: Way) => {
    [list, fields] = [undefined, undefined];
    refusal.textContent = "";
    if (way === "list") list = valueList(values, chosenBy(criterion));
    else if (way !== "kept") {
      const given = criterion && askedOf(criterion);
      const kept = given && given.kind === way ? given.values : [];
      fields = conditionFields(way, kept, typeOf(values));
    }
    choice.replaceChildren(...(list?.parts ?? fields?.parts ?? []));
  };
  const showColumn = () => {
    column = Number(columns.value);
    criterion = filter.columns.find((one) => one.column === column)?.criterion;
    const at = filter.area.column + column;
    values = listedValues(
      rowsBeside(grid, rows, column).map((row) => seenCell(grid, rows.worksheet, row, at)),
    );
    clear.disabled = !criterion;
    const way = wayOf(criterion);
    ways.replaceChildren(
      ...(way === "kept" ? [element("option", { value: "kept" }, "is as its file asks")] : []),
      element("option", { value: "list" }, "is one of these"),
      ...Object.entries(conditionKinds).map(([kind, { label }]) =>
        element("option", { value: kind }, label),
      ),
    );
    ways.value = way;
    showWay(way);
  };
  columns.addEventListener("change", showColumn);
  ways.addEventListener("change", () => showWay(ways.value as Way));
  clear.addEventListener("click", () => set(column, undefined));
  clearEach.addEventListener("click", clearAll);

  const form = element(
    "form",
    {},
    element("p", {}, areaAddress(body)),
    labelled("Column", columns),
    labelled("Show rows where it", ways),
    choice,
    refusal,
    element("p", { className: "actions" }, element("button", {}, "Apply"), clear, clearEach),
  );
  form.setAttribute("aria-label", "Filter");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const chosen = list?.chosen();
    const asked = fields?.asked();
    if (chosen?.length === 0) refusal.textContent = "Choose a value at least.";
    else if (typeof asked === "string") refusal.textContent = asked;
    else if (asked) set(column, criterionOf(asked));
    else set(column, list ? chosen && chosenValues(chosen) : criterion);
  });
  showColumn();
  return form;
}

function wayOf(criterion: Criterion | undefined): Way {
  if (!criterion) return "list";
  return askedOf(criterion)?.kind ?? (criterion.kind === "values" ? "list" : "kept");
}

/** Those that pass now; all where the column is filtered in another way. */
function chosenBy(criterion: Criterion | undefined): (value: ListedValue) => boolean {
  const test = criterion?.kind === "values" ? testOf(criterion) : undefined;
  return ({ cell }) => test?.(cell) ?? true;
}

function typeOf(values: readonly ListedValue[]): ColumnType {
  const numbers = values.filter(({ cell }) => typeof cell.value === "number");
  const texts = values.filter(({ cell }) => typeof cell.value === "string" && cell.value !== "");
  if (numbers.length < texts.length || numbers.length === 0) return "texts";
  return numbers.every(({ cell }) => cell.isDate) ? "days" : "numbers";
}
