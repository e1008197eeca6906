const MG_PER_L_IN_KG_PER_M3 = 1000;

/**
 * Concentration in the effluent, mg/L, of a load kg/d in a flow m³/d: 1000·load/flow.
 * Source: dimensions.
 */
export function effluentConcentration(load: number, flow: number): number {
  return (MG_PER_L_IN_KG_PER_M3 * load) / flow;
}
