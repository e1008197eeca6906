import { figureBeside } from "../figure";
import { impossible } from "../refusal";

/**
 * Share of the solids that stays in the sheet in one pass over the wire.
 *
 * Balance of solids over the forming section: what the headbox brings, H·Q_H, less what the white
 * water takes out, W·Q_W, divided by what the headbox brings: R = 1 − (W/H)·(Q_W/Q_H).
 * `flowRatio` is Q_W/Q_H; at 1 the water that leaves with the sheet is neglected.
 * Consistencies in one unit, whichever it is. Limits: steady running, both samples of one moment.
 *
 * Source: the definition of TAPPI TIP 0502-13, where first-pass, true and overall retention are
 * three things; the flow ratio by the balance above.
 */
export function firstPassRetention(headbox: number, whiteWater: number, flowRatio: number): number {
  const lost = (whiteWater * flowRatio) / headbox;
  if (!(lost <= 1)) {
    impossible(
      `The white water carries ${figureBeside(lost, 1)} times the solids that the headbox brings. ` +
        "Give both consistencies in the same unit, and the flow ratio as white water over headbox.",
    );
  }
  return 1 - lost;
}
