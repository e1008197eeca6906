const FIGURES = 6;
/** With these a number is told from every other. */
const ALL_FIGURES = 17;

/** A number as a message shows it: six figures, so that 0.1 + 0.2 reads 0.3. */
export function figure(value: number, figures = FIGURES): string {
  return String(Number(value.toPrecision(figures)));
}

/** The same for a number that is refused beside another: with as many figures as tell the two apart. */
export function figureBeside(value: number, other: number): string {
  let figures = FIGURES;
  while (figures < ALL_FIGURES && figure(value, figures) === figure(other, figures)) figures++;
  return value === other ? figure(value) : figure(value, figures);
}

/** So many of a thing: "1 value", "3 values". */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}
