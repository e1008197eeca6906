/**
 * Hours until a step in dose has worked through the white water, down to the `remaining` part of its
 * change. The loop is one stirred volume that only its purge renews: the flow around it renews nothing.
 *
 * Source: balance of a stirred tank, V·dC/dt = −Q·C.
 */
export function settlingTime(volume: number, purge: number, remaining: number): number {
  return (volume / purge) * Math.log(1 / remaining);
}
