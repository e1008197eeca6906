import { oneOrEach, requireEqualLengths, type Vector } from "../vectors";

/** Output in t, purchases in kg, money; `costPerTonne` is undefined where nothing is made. */
export interface BudgetLine {
  readonly output: number;
  readonly quantity: number;
  readonly cost: number;
  readonly costPerTonne: number | undefined;
  readonly cumulative: number;
}

export interface Budget {
  /** In order, the first being number 1. */
  readonly periods: readonly (BudgetLine & { readonly number: number })[];
  readonly total: BudgetLine;
}

/**
 * What an additive will cost, period by period: kg = output·dose/(1 − loss), where loss is the share
 * of what is bought that never reaches the machine. Doses, prices and losses are one number for all
 * periods, or one for each. The total's cost per tonne is its cost over its output.
 * Source: definition.
 */
export function budget(outputs: Vector, doses: Vector, prices: Vector, losses: Vector): Budget {
  for (const [name, values] of Object.entries({ doses, prices, losses })) {
    if (values.length !== 1) requireEqualLengths({ outputs, [name]: values });
  }
  const periods: (BudgetLine & { number: number })[] = [];
  let output = 0;
  let quantity = 0;
  let cost = 0;
  for (let i = 0; i < outputs.length; i++) {
    const loss = oneOrEach(losses, i);
    const made = outputs[i] as number;
    const bought = (made * oneOrEach(doses, i)) / (1 - loss);
    const spent = bought * oneOrEach(prices, i);
    output += made;
    quantity += bought;
    cost += spent;
    periods.push({ number: i + 1, ...line(made, bought, spent, cost) });
  }
  return { periods, total: line(output, quantity, cost, cost) };
}

function line(output: number, quantity: number, cost: number, cumulative: number): BudgetLine {
  const costPerTonne = output > 0 ? cost / output : undefined;
  return { output, quantity, cost, costPerTonne, cumulative };
}
