import { figure } from "../figure";
import { impossible } from "../refusal";

const MG_PER_L_IN_KG_PER_M3 = 1000;

/**
 * Concentration in the effluent, mg/L, of a load kg/d in a flow m³/d: 1000·load/flow.
 * Source: dimensions.
 */
export function effluentConcentration(load: number, flow: number): number {
  if (!(flow > 0)) impossible(`The flow is ${figure(flow)} m³/d. Give a flow above 0.`);
  return (MG_PER_L_IN_KG_PER_M3 * load) / flow;
}
