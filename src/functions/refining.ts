import { elementwise } from "../cells/elementwise";
import { aboveZero, notNegative, quantity } from "../cells/quantity";
import { specificEdgeLoad } from "../model/refining/edge-load";
import { netSpecificEnergy } from "../model/refining/energy";

const power = quantity("power", "kW", aboveZero);
const noLoad = quantity("noLoad", "kW", notNegative);

const energy = elementwise(
  "REFINING.ENERGY",
  [power, noLoad, quantity("throughput", "t/h", aboveZero)],
  netSpecificEnergy,
);

/**
 * Net energy that refining spends on each tonne. Gross power would count what turns the rotor without
 * treating fibre. The drainage that refining costs is not in it.
 * @customfunction REFINING.ENERGY
 * @param power Power of the loaded refiner [kW]; above 0, not below noLoad.
 * @param noLoad Power at the same speed, running in stock with the plates backed off [kW]; 0 or more.
 * @param throughput Oven-dry stock through the refiner [t/h]; above 0.
 * @returns Net specific energy [kWh/t].
 * @equation e = \frac{P - P_0}{\dot m}
 * @range Any refiner.
 * @source Definition; common practice, no source.
 * @words beating, refiner, specific energy consumption, SEC, kilowatt hours per tonne
 * @example =WETEND.REFINING.ENERGY(600, 150, 5) → 90
 * @requiresAddress
 */
export function refiningEnergy(
  power: any[][],
  noLoad: any[][],
  throughput: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return energy(power, noLoad, throughput, invocation);
}

const edgeLoad = elementwise(
  "REFINING.EDGELOAD",
  [
    power,
    noLoad,
    quantity("speed", "1/min", aboveZero),
    quantity("cuttingLength", "km/rev", aboveZero),
  ],
  specificEdgeLoad,
);

/**
 * How hard the bars of a refiner strike: net energy spent on each metre of crossing bar edge. Low loads
 * brush the fibre, high loads cut it.
 * @customfunction REFINING.EDGELOAD
 * @param power Power of the loaded refiner [kW]; above 0, not below noLoad.
 * @param noLoad Power at the same speed, running in stock with the plates backed off [kW]; 0 or more.
 * @param speed Rotational speed [1/min]; above 0.
 * @param cuttingLength Cutting edge length of the filling [km/rev]; above 0.
 * @returns Specific edge load [J/m].
 * @equation B = \frac{60\,(P - P_0)}{n\,L}
 * @range Says nothing of bar width or groove. Typical, from memory: softwood 1.5 to 4, hardwood 0.3 to 1 J/m.
 * @source Brecht & Siewert, Das Papier 20 (1966) 4 (from memory).
 * @words SEL, refiner intensity, bar edge length, plate pattern, beating
 * @example =WETEND.REFINING.EDGELOAD(600, 150, 500, 20) → 2.7
 * @requiresAddress
 */
export function refiningEdgeLoad(
  power: any[][],
  noLoad: any[][],
  speed: any[][],
  cuttingLength: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return edgeLoad(power, noLoad, speed, cuttingLength, invocation);
}
