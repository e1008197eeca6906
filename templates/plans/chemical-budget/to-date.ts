/**
 * The months so far: up to the last with an output. The tables of the budget and of the year run on, so that
 * the budget of the year stands while the year goes on. A month among them that is blank counts as one of
 * standstill, with an output and a use of 0, and its blank cells are counted.
 */
const toDate = (column: string) => `TAKE({${column}},{monthsMade})`;

/** A blank cell as 0: hosts hand it over in different ways. */
const amountToDate = (column: string) => `(0+${toDate(column)})`;

export const planToDate = {
  output: toDate("plan.output"),
  dose: toDate("plan.dose"),
  price: toDate("plan.price"),
} as const;

const bought = amountToDate("actual.bought");

export const actualToDate = {
  month: toDate("actual.month"),
  output: amountToDate("actual.output"),
  bought,
  /** Where nothing was bought there is no price, and the planned one changes nothing. */
  price: `IF(${bought}=0,${planToDate.price},${toDate("actual.price")})`,
  /** Where nothing was bought nothing is lost. */
  retention: `IF(${bought}=0,1,${toDate("actual.retention")})`,
} as const;
