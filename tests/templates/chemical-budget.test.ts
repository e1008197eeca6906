import { beforeAll, expect, test } from "vitest";
import { cellAt } from "../../src/workbook/book";
import type { PlannedBook } from "../../src/workbook/layout/planned";
import { chemicalBudget } from "../../templates/plans/chemical-budget";
import { effluent, starch } from "../../templates/plans/harrow-fen/mill";
import { purchaseLoss, year } from "../../templates/plans/harrow-fen/year";
import { computed, numberOf, valueNamed } from "./computed";
import { typedOver } from "./typed-over";

let book: PlannedBook;
beforeAll(async () => {
  ({ book } = await computed(chemicalBudget));
});

const cents = (money: number) => Math.round(money * 100);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const at = (values: readonly number[], month: number) => values[month] as number;

const { budget, actual } = year;
const months = year.months.map((_, month) => {
  const standard = at(budget.dose, month) / (1 - purchaseLoss);
  const price = at(budget.price, month);
  return {
    budget: standard * at(budget.output, month) * price,
    actual: at(actual.bought, month) * at(actual.price, month),
    price: (at(actual.price, month) - price) * at(actual.bought, month),
    usage: (at(actual.bought, month) - standard * at(actual.output, month)) * price,
    activity: (at(actual.output, month) - at(budget.output, month)) * standard * price,
  };
});
const over = sum(months.map((month) => month.actual - month.budget));

test("what was spent over the budget is its price, usage and activity, to the cent", () => {
  expect(cents(numberOf(book, "budgeted"))).toBe(cents(sum(months.map((month) => month.budget))));
  expect(cents(numberOf(book, "overspent"))).toBe(cents(over));
  for (const part of ["price", "usage", "activity"] as const)
    expect(cents(numberOf(book, `${part}Variance`))).toBe(cents(sum(months.map((m) => m[part]))));
  expect(numberOf(book, "unexplained")).toBe(0);
});

test("every month reconciles to the cent", () => {
  const sheet = book.sheets.find(({ name }) => name === "Variance");
  months.forEach((month, index) => {
    const [price, usage, activity, total] = [1, 2, 3, 4].map(
      (column) => sheet && cellAt(sheet, 27 + index, column)?.value,
    ) as [number, number, number, number];
    expect(cents(price + usage + activity)).toBe(cents(total));
    expect(cents(total)).toBe(cents(month.actual - month.budget));
  });
});

test("the charge is the oxygen demand of what does not stay, at the price of the works", () => {
  const charge = sum(
    year.months.map((_, month) => {
      const dosed = at(actual.bought, month) * (1 - purchaseLoss);
      const left = dosed * (1 - at(actual.retention, month));
      return left * starch.codFactor * effluent.treatmentPrice;
    }),
  );
  expect(cents(numberOf(book, "chargeForYear"))).toBe(cents(charge));
});

test("the third quarter is explained by itself", () => {
  const quarter = months.slice(6, 9);
  for (const [name, part] of [
    ["spanPrice", "price"],
    ["spanUsage", "usage"],
    ["spanActivity", "activity"],
  ] as const)
    expect(cents(numberOf(book, name))).toBe(cents(sum(quarter.map((month) => month[part]))));
  const planned = sum(quarter.map((month) => month.budget));
  const more = sum(quarter.map((month) => month.actual - month.budget));
  expect(cents(numberOf(book, "spanOver"))).toBe(cents(more));
  expect(numberOf(book, "spanShare")).toBeCloseTo(more / planned, 10);
});

/** The template while the year goes on: nothing typed for the months to come. */
const after = (over: number, typedNames: Record<string, number> = {}) => {
  const made = (value: number | string | null, month: number) => (month < over ? value : null);
  const typed = ["output", "bought", "price", "retention"].map((key) => [`actual.${key}`, made]);
  return computed(typedOver(chemicalBudget, typedNames, Object.fromEntries(typed)));
};

test("nine months are held against the budget of those nine", async () => {
  const { book, failures } = await after(9);
  expect(failures).toEqual([]);
  const nine = months.slice(0, 9);
  expect(cents(numberOf(book, "budgeted"))).toBe(cents(sum(nine.map((month) => month.budget))));
  const more = sum(nine.map((month) => month.actual - month.budget));
  expect(cents(numberOf(book, "overspent"))).toBe(cents(more));
  expect(numberOf(book, "unexplained")).toBe(0);
});

test("a span whose months are not over, or the wrong way round, is told and explains nothing", async () => {
  const said = async (over: number, span: Record<string, number> = {}) => {
    const { book, failures } = await after(over, span);
    expect(failures).toEqual([]);
    const sheet = book.sheets.find(({ name }) => name === "Variance");
    return [valueNamed(book, "spanShare"), sheet && cellAt(sheet, 22, 0)?.value];
  };
  expect(await said(6)).toEqual(["", "None of these months is over yet."]);
  const july = months[6] as (typeof months)[number];
  const [share, words] = await said(7);
  expect(share).toBeCloseTo((july.actual - july.budget) / july.budget, 10);
  expect(words).toMatch(/^1,427 more was spent .* Months that are not over are left out\.$/);
  expect(await said(12, { firstMonth: 9, lastMonth: 7 })).toEqual([
    "",
    "The first month comes after the last.",
  ]);
});

test("next year's budget stands before a month is over", async () => {
  const { book } = await after(0);
  const about = book.sheets.find(({ name }) => name === "About the budget");
  const answers = [6, 7, 8].map((row) => about && cellAt(about, row, 1)?.value);
  expect(cents(answers[0] as number)).toBe(cents(sum(months.map((month) => month.budget))));
  expect(answers.slice(1)).toEqual(["not yet", "not yet"]);
  expect(valueNamed(book, "monthsMade")).toBe(0);
});

test("a month left blank among the others is one of standstill, and its blank cells are counted", async () => {
  const gap = (value: number | string | null, month: number) => (month === 7 ? null : value);
  const typed = ["output", "bought", "price", "retention"].map((key) => [`actual.${key}`, gap]);
  const { book, failures } = await computed(
    typedOver(chemicalBudget, {}, Object.fromEntries(typed)),
  );
  expect(failures).toEqual([]);
  expect(numberOf(book, "monthsMade")).toBe(12);
  expect(numberOf(book, "leftBlank")).toBe(2);
  const blank = months[7] as (typeof months)[number];
  expect(cents(numberOf(book, "overspent"))).toBe(cents(over - blank.actual));
  expect(numberOf(book, "unexplained")).toBe(0);
});

test("what is used in a month of standstill has its cost in both accounts of the year", async () => {
  const output = (value: number | string | null, month: number) => (month === 3 ? 0 : value);
  const { book, failures } = await computed(
    typedOver(chemicalBudget, {}, { "actual.output": output }),
  );
  expect(failures).toEqual([]);
  const sheet = book.sheets.find(({ name }) => name === "Actual");
  // Month by month the cost stands in L, with the total two rows above.
  const cost = (row: number) => sheet && cellAt(sheet, row, 11)?.value;
  expect(cost(8)).toBeCloseTo(at(actual.bought, 3) * at(actual.price, 3), 6);
  expect(cents(cost(3) as number)).toBe(cents(numberOf(book, "spentInAll")));
});

test("a month of paper without additive is told, one of standstill is not compared, one on plan is at 0", async () => {
  const [onPlan, unused, still] = [0, 1, 2];
  const bought = (value: number | string | null, month: number) => {
    if (month === onPlan)
      return (at(budget.dose, month) * at(actual.output, month)) / (1 - purchaseLoss);
    return month === unused || month === still ? 0 : value;
  };
  const output = (value: number | string | null, month: number) => (month === still ? 0 : value);
  const typed = typedOver(chemicalBudget, {}, { "actual.bought": bought, "actual.output": output });
  const { book, failures } = await computed(typed);
  expect(failures).toEqual([]);
  const shown = (name: string, row: number, column: number) => {
    const sheet = book.sheets.find((one) => one.name === name);
    return [onPlan, unused, still].map(
      (month) => sheet && cellAt(sheet, row + month, column)?.value,
    );
  };
  expect(shown("Actual", 5, 7)).toEqual([0, -1, ""]);
  expect(shown("Variance", 27, 6)).toEqual(["", "none used", ""]);
});

test("a month whose price is not typed yet is refused by its place, not taken as free", async () => {
  const gap = (value: number | string | null, month: number) => (month === 7 ? null : value);
  const { book, failures } = await computed(typedOver(chemicalBudget, {}, { "actual.price": gap }));
  expect(numberOf(book, "leftBlank")).toBe(1);
  const messages = failures.map(({ message }) => message);
  expect(messages).toContain(
    "actualPrice (8 of 12) is 0 or blank. Give a number above 0 [money/kg].",
  );
});

test("a sentence says how much more was spent, and mostly why", () => {
  const sheet = book.sheets.find(({ name }) => name === "Variance");
  const said = [12, 22].map((row) => sheet && cellAt(sheet, row, 0)?.value);
  const words = (more: number, planned: number) =>
    `${Math.round(more).toLocaleString("en")} more was spent than the ${Math.round(planned).toLocaleString("en")} budgeted (${((100 * more) / planned).toFixed(1)} %), mostly because of the price.`;
  const quarter = months.slice(6, 9);
  const planned = (span: typeof months) => sum(span.map((month) => month.budget));
  const more = (span: typeof months) => sum(span.map((month) => month.actual - month.budget));
  expect(said).toEqual([months, quarter].map((span) => words(more(span), planned(span))));
});

test("an additive that is no starch is named once, and stands on every sheet", async () => {
  const names = { additive: "cationic guar gum", otherAdditive: "xanthan gum" };
  const { book } = await computed(typedOver(chemicalBudget, names));
  const shown = book.sheets
    .slice(1)
    .flatMap(({ name, cells, charts = [] }) => [
      ...Object.values(cells).flatMap((row) =>
        Object.values(row).map(({ value }) => [name, `${value ?? ""}`] as const),
      ),
      ...charts.map(({ title }) => [name, title] as const),
    ]);
  const naming = shown.flatMap(([name, text]) => (text.startsWith(names.additive) ? [name] : []));
  expect(naming).toEqual(["Budget", "Actual", "Variance", "Effluent charge", "Parity"]);
  const typical = "Starch: 1.1, from memory.";
  const rules = book.sheets.flatMap(({ entryRules }) => entryRules);
  const rule = rules.find(({ prompt }) => prompt?.title === "Additive");
  expect(rule?.refusal?.text).toBe("Give a name, not a number.");
  expect(shown.filter(([, text]) => /starch/i.test(text) && text !== typical)).toEqual([]);
});
