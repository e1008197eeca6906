/** A number as a message shows it: six figures, so that 0.1 + 0.2 reads 0.3. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}
