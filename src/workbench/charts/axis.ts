/** A scale with round numbers, between the ends that a plan gives or the data want. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  /** Where numbers stand. */
  readonly ticks: readonly number[];
}

export interface Ends {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

const MOST_STEPS = 7;
const ROUND = [1, 2, 5, 10];
/** Values that vary by less than this part of the largest are shown without their way up from 0. */
const NARROW = 1 / 6;
/** No scale is made for less. */
const SMALLEST = 1e-100;
/** What is left free beyond the outermost value, as a part of all, so that it does not lie on the frame. */
const HEADROOM = 0.05;

function roundStep(span: number): number {
  const raw = span / MOST_STEPS;
  const power = 10 ** Math.floor(Math.log10(raw));
  return (ROUND.find((digit) => digit * power >= raw * (1 - 1e-9)) as number) * power;
}

/** Low and high of what is drawn, 0 with them unless all of it lies far off and close together. */
function reach(values: readonly number[]): [low: number, high: number] {
  if (values.every((value) => Math.abs(value) < SMALLEST)) return [0, 1];
  const low = values.reduce((least, value) => Math.min(least, value));
  const high = values.reduce((most, value) => Math.max(most, value));
  if (low > 0 && high - low > NARROW * high) return [0, high];
  if (high < 0 && high - low > NARROW * -low) return [low, 0];
  const alike = high - low < 1e-9 * Math.max(high, -low);
  return alike ? [Math.min(0, low), Math.max(0, high)] : [low, high];
}

export function axisOf(values: readonly number[], { from, to }: Ends): Axis {
  const [low, high] = reach(values);
  const room = HEADROOM * ((to ?? high) - (from ?? low));
  const above = high === 0 ? 0 : high + room;
  const below = low === 0 ? 0 : low - room;
  const [least, most] = [
    from ?? Math.min(below, to ?? below),
    to ?? Math.max(above, from ?? above),
  ];
  const step = roundStep(most > least ? most - least : 1);
  const start = from ?? Math.floor(least / step + 1e-9) * step;
  const end = to ?? Math.max(start + step, Math.ceil(most / step - 1e-9) * step);
  // From a planned start on: the numbers count from there.
  const first = from ?? start;
  const count = Math.floor((end - first) / step + 1e-9);
  const ticks = Array.from({ length: count + 1 }, (_, index) => rounded(first + index * step));
  return { from: start, to: end, ticks };
}

/** Without the last digits that sums of fractions leave: 0.30000000000000004. */
const rounded = (value: number) => Number(value.toPrecision(12));
