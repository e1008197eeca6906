import { aboveZero, belowOne, notNegative } from "../cells/quantity";
import { optionalLabels, optionalVector, vector } from "../cells/vector";
import { type TableCell, whole } from "../cells/whole";
import { type BudgetLine, budget } from "../model/cost/budget";
import { markOf, type Variance, variances } from "../model/cost/variance";

const oneForAll = { oneForAll: true };

const planned = whole(
  "COST.BUDGET",
  [
    vector("output", "p", "t", notNegative),
    vector("doses", "p", "kg/t", notNegative, oneForAll),
    vector("prices", "p", "money/kg", aboveZero, oneForAll),
    optionalVector("losses", "p", "fraction", belowOne, oneForAll),
    optionalLabels("periods", "p"),
  ],
  (output, doses, prices, losses, names) => {
    const { periods, total } = budget(output, doses, prices, losses ?? [0]);
    return [
      [
        "period",
        "output [t]",
        "additive [kg]",
        "cost [money]",
        "cost [money/t]",
        "cumulative [money]",
      ],
      ...periods.map((line, i) => budgetRow(names?.[i] ?? line.number, line)),
      budgetRow("total", total),
    ];
  },
);

function budgetRow(period: TableCell, line: BudgetLine): TableCell[] {
  const { output, quantity, cost, costPerTonne, cumulative } = line;
  return [period, output, quantity, cost, costPerTonne ?? "", cumulative];
}

/**
 * What an additive will cost, period by period, with the total last.
 * @customfunction COST.BUDGET
 * @param output Oven-dry furnish of each period [t]; 0 or more; a row or a column.
 * @param doses Dose of dry active additive [kg/t]; 0 or more; one for all periods, or one each.
 * @param prices Price of dry active additive [money/kg]; above 0; one for all periods, or one each.
 * @param [losses] Share of what is bought that never reaches the machine [fraction]; from 0, below 1; one for all periods, or one each; 0 if left out.
 * @param [periods] Names of the periods; of a date its number stands there, so give TEXT(dates, "mmm yyyy") [text or number]; 1, 2, 3… if left out.
 * @returns Table, a row a period and a last row for the total: output [t], additive bought [kg], cost [money], cost per tonne [money/t], cumulative cost [money].
 * @equation \text{kg} = \frac{\text{output} \cdot \text{dose}}{1 - \text{loss}}, \quad \text{cost} = \text{kg} \cdot \text{price}
 * @range What is bought in a period is used in it: no stock is carried over.
 * @source Definition.
 * @words yearly budget, forecast, monthly cost, purchasing plan
 * @example =WETEND.COST.BUDGET({10000,9000}, 8, {0.6,0.65}, 0, {"Jan","Feb"}) → {"period","output [t]","additive [kg]","cost [money]","cost [money/t]","cumulative [money]";"Jan",10000,80000,48000,4.8,48000;"Feb",9000,72000,46800,5.2,94800;"total",19000,152000,94800,4.989474,94800}
 * @requiresAddress
 */
export function costBudget(
  output: any[][],
  doses: any[][],
  prices: any[][],
  losses: any[][],
  periods: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return planned(output, doses, prices, losses, periods, invocation);
}

const explained = whole(
  "COST.VARIANCE",
  [
    vector("standardPrice", "p", "money/kg", aboveZero, oneForAll),
    vector("standardDose", "p", "kg/t", notNegative, oneForAll),
    vector("standardOutput", "p", "t", notNegative, oneForAll),
    vector("actualPrice", "p", "money/kg", aboveZero, oneForAll),
    vector("actualQuantity", "p", "kg", notNegative, oneForAll),
    vector("actualOutput", "p", "t", notNegative, oneForAll),
  ],
  (...values) => {
    const { periods, total } = variances(...values);
    return [
      [
        "period",
        "price [money]",
        "usage [money]",
        "activity [money]",
        "total [money]",
        "price mark",
        "usage mark",
      ],
      ...periods.map((period) => varianceRow(period.number, period)),
      varianceRow("total", total),
    ];
  },
);

function varianceRow(period: TableCell, { price, usage, activity, total }: Variance): TableCell[] {
  return [period, price, usage, activity, total, markOf(price), markOf(usage)];
}

/**
 * Why a period cost more or less than budgeted: price, usage and activity (the output made). Above 0, more
 * was spent than budgeted. Price and usage are marked A (adverse) or F (favourable); activity is neither.
 * @customfunction COST.VARIANCE
 * @param standardPrice Budgeted price of dry active additive [money/kg]; above 0; one for all periods, or one each.
 * @param standardDose Budgeted dose, with what is lost before the machine where actualQuantity has it in [kg/t]; 0 or more; one for all periods, or one each.
 * @param standardOutput Budgeted output [t]; 0 or more; one for all periods, or one each.
 * @param actualPrice Price paid [money/kg]; above 0; one for all periods, or one each.
 * @param actualQuantity Dry active additive used, not what was bought for stock [kg]; 0 or more; one for all periods, or one each.
 * @param actualOutput Output made [t]; 0 or more; one for all periods, or one each.
 * @returns Table, a row a period and a last row for the total: price, usage, activity and total variance [money], marks of price and usage [A or F].
 * @equation \begin{aligned} \text{price} &= (p_a - p_s)\,Q_a \\ \text{usage} &= (Q_a - d_s O_a)\,p_s \\ \text{activity} &= (O_a - O_s)\,d_s p_s \end{aligned}
 * @range The three parts sum to the total exactly.
 * @source Standard costing (common practice, no source); complete by algebra.
 * @words standard costing, over budget, price variance, usage variance, volume variance, flexed budget
 * @example =WETEND.COST.VARIANCE(0.6, 8, 10000, 0.64, 90300, 10500) → {"period","price [money]","usage [money]","activity [money]","total [money]","price mark","usage mark";1,3612,3780,2400,9792,"A","A";"total",3612,3780,2400,9792,"A","A"}
 * @requiresAddress
 */
export function costVariance(
  standardPrice: any[][],
  standardDose: any[][],
  standardOutput: any[][],
  actualPrice: any[][],
  actualQuantity: any[][],
  actualOutput: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return explained(
    standardPrice,
    standardDose,
    standardOutput,
    actualPrice,
    actualQuantity,
    actualOutput,
    invocation,
  );
}
