/** Sums of dates, which are days counted from a first one. */

const DAY = 86_400_000;
/** The serial number 0 stands for this day; before 1 March 1900 the spreadsheet's calendar is off by a day. */
const FIRST_DAY = Date.UTC(1899, 11, 30);

/** The same day so many months on, or the last of that month where it is shorter. */
export function sameDayMonthsOn(serial: number, months: number): number | undefined {
  if (serial < 0) return undefined;
  const date = new Date(FIRST_DAY + Math.floor(serial) * DAY);
  const month = date.getUTCMonth() + Math.trunc(months);
  const last = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0)).getUTCDate();
  const moved = Date.UTC(date.getUTCFullYear(), month, Math.min(date.getUTCDate(), last));
  const result = (moved - FIRST_DAY) / DAY;
  return result >= 0 ? result : undefined;
}

interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

function dayOf(serial: number): Day {
  const date = new Date(FIRST_DAY + serial * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

const serialOf = (year: number, month: number, day: number) =>
  (Date.UTC(year, month - 1, day) - FIRST_DAY) / DAY;

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const isEndOfFebruary = ({ year, month, day }: Day) =>
  month === 2 && day === (isLeap(year) ? 29 : 28);

const of360 = (from: Day, to: Day, first: number, last: number) =>
  ((to.year - from.year) * 360 + (to.month - from.month) * 30 + (last - first)) / 360;

/** Months of thirty days, in the way of the United States. */
function thirtyDays(from: Day, to: Day): number {
  let [first, last] = [from.day, to.day];
  if (isEndOfFebruary(from)) {
    if (isEndOfFebruary(to)) last = 30;
    first = 30;
  }
  if (last === 31 && first >= 30) last = 30;
  return of360(from, to, Math.min(first, 30), last);
}

/** Days in the year, or on average in the years, that two days lie in. */
function yearLength(start: number, end: number, from: Day, to: Day): number {
  const withinYear =
    from.year === to.year ||
    (from.year + 1 === to.year &&
      (from.month > to.month || (from.month === to.month && from.day >= to.day)));
  if (!withinYear) {
    const years = to.year - from.year + 1;
    return (serialOf(to.year + 1, 1, 1) - serialOf(from.year, 1, 1)) / years;
  }
  if (from.year === to.year) return isLeap(from.year) ? 366 : 365;
  const holdsLeapDay = [from.year, to.year].some((year) => {
    const leapDay = serialOf(year, 2, 29);
    return isLeap(year) && start <= leapDay && leapDay <= end;
  });
  return holdsLeapDay ? 366 : 365;
}

/**
 * The part of a year between two days, counted in one of five ways: 0 and 4 months of thirty days, 1 the
 * days that there are, 2 and 3 the days over 360 and 365. Source: OASIS OpenFormula, "Date Basis"; from memory.
 */
export function yearFraction(one: number, other: number, basis = 0): number | undefined {
  const [start, end] = [Math.floor(Math.min(one, other)), Math.floor(Math.max(one, other))];
  if (start < 0) return undefined;
  const [from, to] = [dayOf(start), dayOf(end)];
  switch (Math.trunc(basis)) {
    case 0:
      return thirtyDays(from, to);
    case 1:
      return (end - start) / yearLength(start, end, from, to);
    case 2:
      return (end - start) / 360;
    case 3:
      return (end - start) / 365;
    case 4:
      return of360(from, to, Math.min(from.day, 30), Math.min(to.day, 30));
    default:
      return undefined;
  }
}
