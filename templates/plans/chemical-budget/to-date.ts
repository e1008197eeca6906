/**
 * The months that are over: those with an output. The tables of the budget and of the year run on, so that the
 * budget of the year stands while the year goes on.
 */
const toDate = (column: string) => `TAKE({${column}},{monthsMade})`;

export const planToDate = {
  output: toDate("plan.output"),
  dose: toDate("plan.dose"),
  price: toDate("plan.price"),
} as const;

export const actualToDate = {
  month: toDate("actual.month"),
  output: toDate("actual.output"),
  bought: toDate("actual.bought"),
  price: toDate("actual.price"),
  retention: toDate("actual.retention"),
} as const;
