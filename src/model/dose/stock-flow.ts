/**
 * Oven-dry throughput of a stock line, t/h: flow m³/h times the density of the stock t/m³ times
 * consistency, which is mass of dry solids to mass of stock.
 * Source: definition of consistency.
 */
export function stockThroughput(flow: number, consistency: number, density: number): number {
  return flow * density * consistency;
}
