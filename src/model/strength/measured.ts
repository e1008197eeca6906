import type { Label } from "../batches/groups";
import type { Vector } from "../vectors";
import { fitBestShape } from "./best-shape";
import { type Fit, fitResponse } from "./fit";
import { independentPoints } from "./points";
import { type Shape, shapes } from "./response";

/** The shapes that a fit may be asked for: one by name, or the one that suits the points best. */
export const fittedShapes = [...shapes, "best"] as const;

/** Fits what was measured: sheets of a batch are averaged, blocks have bases of their own. */
export function fitMeasured(
  doses: Vector,
  strengths: Vector,
  shape: Shape | "best",
  knownBase?: number,
  batches?: ArrayLike<Label>,
  blocks?: ArrayLike<Label>,
): Fit {
  const points = independentPoints(doses, strengths, batches, blocks);
  return shape === "best" ? fitBestShape(points, knownBase) : fitResponse(points, shape, knownBase);
}
