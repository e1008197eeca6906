import mixes from "../references/least-cost-mix.json";
import curves from "../references/nonlinear-regression.json";
import settled from "../references/partition-equilibrium.json";
import order from "../references/partition-order.json";
import timed from "../references/partition-timed.json";
import oxygen from "../references/stoichiometry.json";
import trials from "../references/trial-statistics.json";

/** A number from outside the project, and the cell of ours that it is held against. */
export interface OutsideCheck {
  readonly formula: string;
  readonly expected: number;
  /** Which cell of the answer, counted from 0. */
  readonly cell?: readonly [row: number, column: number];
  /** Relative, from the digits that the source gives. */
  readonly tolerance: number;
  readonly source: string;
}

const list = (values: readonly (number | string)[], separator = ",") =>
  `{${values.map((value) => (typeof value === "string" ? `"${value}"` : value)).join(separator)}}`;

/** Half a unit of the last digit that is printed. */
const halfLastDigit = (printed: string) => {
  const decimals = (printed.split(".")[1] ?? "").length;
  return (0.5 * 10 ** -decimals) / Math.abs(Number(printed));
};

function printed(formula: string, value: string, source: string): OutsideCheck {
  return { formula, expected: Number(value), tolerance: halfLastDigit(value), source };
}

const commonPractice = "common practice, no source";
const byArithmetic = "arithmetic of the definition";
const atomicMasses = "IUPAC/CIAAW abridged atomic masses, stoichiometry";

const { shares, surfaces, capacities, halfLoads, dose, thickStock, thinStock } = order;
const furnish = [shares, surfaces, capacities, halfLoads].map((one) => list(one)).join(",");

function partition(): OutsideCheck[] {
  const [one] = settled.cases;
  const [slow] = timed.cases;
  if (one === undefined || slow === undefined) throw new Error("the references are empty");
  const held = [one.shares, one.surfaces, one.capacities, one.halfLoads].map((each) => list(each));
  const taken = [slow.shares, slow.surfaces, slow.capacities, slow.halfLoads, slow.rates];
  const timedFormula = `=WETEND.PARTITION.TIMED(${list(slow.times)},${slow.dose},${slow.consistency},${taken.map((each) => list(each)).join(",")})`;
  const percentOf = (formula: string, column: number, percent: number): OutsideCheck => ({
    formula,
    cell: [0, column],
    expected: (percent / 100) * dose,
    tolerance: order.agreementPercent / percent,
    source: commonPractice,
  });
  const first = `=WETEND.PARTITION.EQUILIBRIUM(${dose},${thickStock},${furnish})`;
  const last = `=WETEND.PARTITION.ORDERED(${dose},1,{1,1,2},{${thickStock},${thinStock}},${furnish})`;
  return [
    ...one.split.map(
      (expected, i): OutsideCheck => ({
        formula: `=WETEND.PARTITION.EQUILIBRIUM(${one.dose},${one.consistency},${held.join(",")})`,
        cell: [0, i],
        expected,
        tolerance: (settled.relativeToDose * one.dose) / expected,
        source: "the balance solved in 50-digit arithmetic",
      }),
    ),
    percentOf(first, 0, order.fillerFirstPercent.fibre),
    percentOf(first, 1, order.fillerFirstPercent.fines),
    percentOf(first, 2, order.fillerFirstPercent.clay),
    percentOf(last, 1, order.fillerLastPercent.fines),
    percentOf(last, 2, order.fillerLastPercent.clay),
    ...slow.rows.map(
      (line, row): OutsideCheck => ({
        formula: timedFormula,
        cell: [row, 1],
        expected: line[1] as number,
        tolerance: timed.relative,
        source: "Taylor series in 30-digit arithmetic",
      }),
    ),
  ];
}

/** What stays after every further round of the white water, added up until nothing is left to add. */
function geometricSeries(firstPass: number, recycled: number, degraded: number): number {
  let round = firstPass;
  let sum = 0;
  while (sum + round > sum) {
    sum += round;
    round *= (1 - firstPass) * recycled * (1 - degraded);
  }
  return sum;
}

function balances(): OutsideCheck[] {
  const loop = (firstPass: number, recycled: number, degraded: number): OutsideCheck => ({
    formula: `=WETEND.RETENTION.LOOP(${firstPass},${recycled},${degraded})`,
    expected: geometricSeries(firstPass, recycled, degraded),
    tolerance: 1e-12,
    source: "the geometric series, summed term by term",
  });
  return [
    loop(0.15, 0.95, 0),
    loop(0.15, 0.95, 0.5),
    loop(0.6, 0.9, 0.3),
    printed("=WETEND.DOSE.PUMP(8,9.3,0.03,1.01)", "2455.446", byArithmetic),
    printed('=WETEND.DOSE.CONVERT(1,"lb/short ton","kg/t")', "0.5", "1 short ton = 2000 lb"),
    printed("=WETEND.REFINING.ENERGY(600,150,5)", "90", byArithmetic),
    printed("=WETEND.REFINING.EDGELOAD(600,150,500,20)", "2.7", byArithmetic),
    printed("=WETEND.EFFLUENT.EQUIVALENTS(600)", "10000", "Directive 91/271/EEC: 60 g BOD5 a day"),
  ];
}

function chemistry(): OutsideCheck[] {
  const demand = oxygen.theoretical_oxygen_demand;
  const exact = (formula: string, expected: number): OutsideCheck => ({
    formula,
    expected,
    tolerance: 1e-12,
    source: atomicMasses,
  });
  const cationic = oxygen.by_degree_of_substitution["0.035"];
  return [
    exact('=WETEND.EFFLUENT.OXYGEN("C6H10O5")', demand.starch),
    exact('=WETEND.EFFLUENT.OXYGEN("C6H12O6")', demand.glucose),
    exact('=WETEND.EFFLUENT.OXYGEN("C2H2O2")', demand.glyoxal),
    exact('=WETEND.EFFLUENT.OXYGEN("C3H5NO")', demand.PAM_noNitr),
    exact('=WETEND.EFFLUENT.OXYGEN("C3H5NO",TRUE)', demand.PAM_nitr),
    exact("=WETEND.CHARGE.DENSITY(0.035)", cationic.charge_meq_g),
    exact("=WETEND.CHARGE.NITROGEN(0.035)", cationic.pctN / 100),
    exact(
      '=WETEND.LIBRARY.COMPONENT("Ground calcium carbonate","ash factor")',
      oxygen.ash_factors.CaCO3_to_CaO,
    ),
  ];
}

function strength(): OutsideCheck[] {
  const fits = curves.cases.flatMap(({ name, shape, doses, strengths, ...known }) => {
    const formula = `=WETEND.STRENGTH.FIT(${list(doses)},${list(strengths)},"${shape}",0)`;
    const at = (row: number, column: number, expected: number): OutsideCheck => ({
      formula,
      cell: [row, column],
      expected,
      tolerance: 1e-6,
      source: name.startsWith("Misra") ? `NIST StRD ${name}` : `${name}, Bates & Watts 1988`,
    });
    return [at(2, 1, known.gain), at(2, 2, known.gainError)];
  });
  return [
    ...fits,
    printed("=WETEND.STRENGTH.INDEX(3.6,60)", "60", "ISO 1924-2, definition"),
    printed(
      "=WETEND.STRENGTH.PAGE(120,0.20,5,70,2.3,0.4)",
      "59.4233",
      "the equation of Page (1969), by hand",
    ),
  ];
}

function money(): OutsideCheck[] {
  const mix = mixes.cases[0];
  if (mix === undefined) throw new Error("the reference is empty");
  const { target, plateauGains, scales, prices, maxima, shapes, sideUse, sideLimits } = mix;
  const vectors = [plateauGains, scales, prices, maxima, shapes].map((one) => list(one));
  const use = list((sideUse as number[][])[0] ?? []);
  return [
    printed("=WETEND.COST.PARITY(0.5,0.1,1)", "5.00", `tenfold: ${commonPractice}`),
    printed("=WETEND.COST.PARITY(0.5,0.1,1,0.15)", "6.35", byArithmetic),
    printed("=WETEND.COST.PARITY(0.5,0.2,0.8,0.22,1.25,0.33)", "3.314", byArithmetic),
    {
      formula: `=WETEND.COST.MIX(${target},${vectors.join(",")},${use},${list(sideLimits as number[])})`,
      cell: [plateauGains.length + 1, 3],
      expected: mix.cost as number,
      tolerance: mixes.relative,
      source: "SLSQP (SciPy) and linear programmes (HiGHS)",
    },
    {
      formula: "=WETEND.COST.VARIANCE(0.6,8,10000,0.64,90300,10500)",
      cell: [2, 4],
      expected: 57792 - 48000,
      tolerance: 1e-12,
      source: byArithmetic,
    },
  ];
}

function trial(): OutsideCheck[] {
  const { data, p_two: p, margin_two: margins } = trials.dunnett_example;
  const groups = [data.control, data.a, data.b, data.c];
  const levels = groups.flatMap((group, i) => group.map(() => i));
  const compare = `=WETEND.TRIAL.COMPARE(${list(levels)},${list(groups.flat())})`;
  const batches = (power: number, n: number): OutsideCheck => ({
    formula: `=WETEND.TRIAL.REPLICATES(0.04,0.05,${power})`,
    expected: Math.ceil(n),
    tolerance: 0,
    source: `R 4.2.2 power.t.test: ${n}`,
  });
  return [
    ...p.map(
      (expected, i): OutsideCheck => ({
        formula: compare,
        cell: [i + 2, 7],
        expected,
        tolerance: 1e-6,
        source: "SciPy 1.17 dunnett",
      }),
    ),
    {
      formula: compare,
      cell: [2, 6],
      expected: 61 - 50 + (margins[0] as number),
      tolerance: 1e-6,
      source: "SciPy 1.17, margin of the comparison",
    },
    batches(0.8, trials.power.n_cv4pct_diff5pct_power80),
    batches(0.9, trials.power.n_cv4pct_diff5pct_power90),
  ];
}

function uncertainty(): OutsideCheck[] {
  const sample = 'WETEND.UNCERTAINTY.SAMPLE(-1.959963985,0,1.959963985,10000,1,"normal")';
  const summary = `=WETEND.UNCERTAINTY.SUMMARY(${sample})`;
  const source = "JCGM 101:2008, one normal quantity; tolerance of two significant digits";
  return [
    { formula: summary, cell: [1, 1], expected: 1, tolerance: 0.005, source },
    { formula: summary, cell: [4, 1], expected: 1.96, tolerance: 0.005, source },
  ];
}

/** Every family is held against something from outside; the finer checks stand beside each model. */
export const outsideChecks: readonly OutsideCheck[] = [
  ...partition(),
  ...balances(),
  ...chemistry(),
  ...strength(),
  ...money(),
  ...trial(),
  ...uncertainty(),
];
