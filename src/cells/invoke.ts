export type Formula = (...values: unknown[]) => number;

/** Calls a formula without spreading its values: a spread costs several times what such a formula does. */
export function invoke(formula: Formula, v: readonly unknown[]): number {
  switch (v.length) {
    case 1:
      return formula(v[0]);
    case 2:
      return formula(v[0], v[1]);
    case 3:
      return formula(v[0], v[1], v[2]);
    case 4:
      return formula(v[0], v[1], v[2], v[3]);
    case 5:
      return formula(v[0], v[1], v[2], v[3], v[4]);
    default:
      return formula(...v);
  }
}

/**
 * Taken once: where a host gives each script a global object of its own, looking a name up there costs more
 * than the formula does.
 */
export const { isNaN: isNoValue, NaN: NO_VALUE } = Number;

/** The value, or NaN where the formula refuses or overflows: a closer look then says why. */
export function attempt(formula: Formula, values: readonly unknown[]): number {
  try {
    const value = invoke(formula, values);
    return value - value === 0 ? value : NO_VALUE;
  } catch {
    return NO_VALUE;
  }
}

/** The same for up to four values, none of them in a list. A value that is NaN spares the formula. */
export function attemptFew(
  formula: Formula,
  count: number,
  a: number,
  b: number,
  c: number,
  d: number,
): number {
  if (isNoValue(a) || isNoValue(b) || isNoValue(c) || isNoValue(d)) return NO_VALUE;
  try {
    const value = invokeFew(formula, count, a, b, c, d);
    return value - value === 0 ? value : NO_VALUE;
  } catch {
    return NO_VALUE;
  }
}

function invokeFew(f: Formula, count: number, a: number, b: number, c: number, d: number): number {
  switch (count) {
    case 1:
      return f(a);
    case 2:
      return f(a, b);
    case 3:
      return f(a, b, c);
    default:
      return f(a, b, c, d);
  }
}
