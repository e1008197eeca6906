import { sumOfSquares } from "../vectors";
import type { Points } from "./points";
import { type Shape, unitCurves } from "./response";

/** The least-squares fit at one given scale, and how it leans on that scale. */
export interface Projection {
  readonly scale: number;
  /** The known base, or the mean of the blocks' bases. */
  readonly base: number;
  readonly gain: number;
  readonly residualSumOfSquares: number;
  /** Σf², the information on the gain. */
  readonly riseSquares: number;
  /** f·q/Σf², the part of the scale's effect that the gain can imitate. */
  readonly lean: number;
  /** Σq⊥², what is left of the scale's effect: its information, per gain². */
  readonly acrossSquares: number;
  /** Means over the blocks of the rise and of its turn, which tie the base to gain and scale. */
  readonly meanRise: number;
  readonly meanTurn: number;
  /** The Gauss–Newton step in ln(scale): above 0 where a larger scale fits better. */
  readonly step: number;
  /** |q⊥|/|f|: how far the fitted curve changes, as a share of its height, when ln(scale) changes by 1. */
  readonly trace: number;
}

export interface Projector {
  /** Sum of squares of the strengths about their base, before any response is fitted. */
  readonly spread: number;
  at(scale: number): Projection;
}

/**
 * Base and gain enter a response linearly, so that at a given scale they follow in closed form, and what
 * is left is a function of the scale alone. Each block's base takes the block's mean out of strengths and
 * rise; with a known base nothing is taken out. With f the rise so centred, q = ∂f/∂ln(scale) and q⊥ its
 * part across f, the residual r obeys ∂(r·r)/∂ln(scale) = −2·gain·r·q⊥.
 *
 * Source: Golub & Pereyra, SIAM J. Numer. Anal. 10 (1973) 413–432.
 */
export function projector(
  { doses, strengths, blocks }: Points,
  shape: Shape,
  knownBase: number | undefined,
): Projector {
  const { rise, turn } = unitCurves[shape];
  const count = doses.length;
  const centre = (values: Float64Array) => (knownBase === undefined ? blocks.centre(values) : 0);
  const wanted = strengths.map((strength) => strength - (knownBase ?? 0));
  const meanStrength = centre(wanted);
  const f = new Float64Array(count);
  const q = new Float64Array(count);

  function at(scale: number): Projection {
    for (let i = 0; i < count; i++) {
      const t = (doses[i] as number) / scale;
      const risen = rise(t);
      f[i] = risen;
      q[i] = turn(t, risen);
    }
    const meanRise = centre(f);
    const meanTurn = centre(q);
    let riseSquares = 0;
    let along = 0;
    let reached = 0;
    for (let i = 0; i < count; i++) {
      const fi = f[i] as number;
      riseSquares += fi * fi;
      along += fi * (q[i] as number);
      reached += fi * (wanted[i] as number);
    }
    const gain = reached / riseSquares;
    const lean = along / riseSquares;
    let residualSumOfSquares = 0;
    let acrossSquares = 0;
    let pull = 0;
    for (let i = 0; i < count; i++) {
      const residual = (wanted[i] as number) - gain * (f[i] as number);
      const across = (q[i] as number) - lean * (f[i] as number);
      residualSumOfSquares += residual * residual;
      acrossSquares += across * across;
      pull += residual * across;
    }
    return {
      scale,
      base: knownBase ?? meanStrength - gain * meanRise,
      gain,
      residualSumOfSquares,
      riseSquares,
      lean,
      acrossSquares,
      meanRise,
      meanTurn,
      step: pull / (gain * acrossSquares),
      trace: Math.sqrt(acrossSquares / riseSquares),
    };
  }
  return { spread: sumOfSquares(wanted), at };
}
